import { chainLength } from '../../src/lib/geometry/chain.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { chainOf } from '../../src/lib/recipe/anchors.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { toAttempt } from '../../src/lib/recipe/save.ts';
import type { Attempt, Command, CommandName, Fabric, Work } from '../../src/lib/recipe/types.ts';
import { landmark, sampleAttempt, type STEPS, type Variations } from '../recipe/sample.ts';

export type StepId = (typeof STEPS)[number];
type Named<N extends CommandName> = Extract<Command, { do: N }>;

/** What an edit of a step's commands can see: the table before the step, and the step's own commands as the sample gives them. */
export interface Before {
  readonly work: Work;
  readonly own: readonly Command[];
}

/** A golden attempt of one step: the sample up to the step, with the step's own commands edited. */
export interface Case {
  readonly step: StepId;
  readonly name: string;
  readonly verdict: 'accepted' | 'needsWork' | 'notReady';
  /** Codes of the findings that are wrong or missing; exactly these. */
  readonly codes: readonly string[];
  /** Codes of the causes named in them; exactly these. */
  readonly causes: readonly string[];
  readonly figure: string;
  readonly fabric: Fabric;
  readonly variations: Variations;
  readonly edit: (before: Before) => readonly Command[];
  /** Edits earlier steps as well. */
  readonly earlier: (commands: readonly Command[]) => readonly Command[];
}

type Options = Partial<Omit<Case, 'step' | 'name' | 'verdict'>>;

const make = (step: StepId, name: string, verdict: Case['verdict'], options: Options): Case => ({
  step,
  name,
  verdict,
  codes: [],
  causes: [],
  figure: 'F2',
  fabric: 'knit',
  variations: {},
  edit: ({ own }) => own,
  earlier: (commands) => commands,
  ...options,
});

export const start = (step: StepId, codes: readonly string[]): Case =>
  make(step, 'start', 'notReady', { codes, edit: () => [] });
export const pass = (step: StepId, name: string, options: Options = {}): Case =>
  make(step, `pass-${name}`, 'accepted', options);
/** Named after its first code: `dart-closed/pivot` → `fail-dart-closed-pivot`, with a word more where one code has several. */
export const fail = (step: StepId, codes: readonly string[], word: string, options: Options = {}): Case =>
  make(step, `fail-${codes[0]!.replace('/', '-')}${word === '' ? '' : `-${word}`}`, 'needsWork', {
    codes,
    ...options,
  });
export const unfinished = (
  step: StepId,
  codes: readonly string[],
  word: string,
  options: Options = {},
): Case => make(step, `unfinished-${word}`, 'notReady', { codes, ...options });

/** The attempt of a case: nothing after its step. */
export function attemptOf({ step, figure, fabric, variations, edit, earlier }: Case): Attempt {
  const sample = sampleAttempt(figure, fabric, { ...variations, upTo: step });
  const before = earlier(sample.commands.filter((command) => command.step !== step));
  const own = sample.commands.filter((command) => command.step === step);
  const { work } = replay({ ...sample, commands: before });
  const edited = edit({ work, own }).map((command) => ({ ...command, step }));
  return toAttempt({ ...sample, commands: [...before, ...edited] });
}

/** Changes every command of one kind that `which` picks (all when left out). */
export const changing =
  <N extends CommandName>(
    kind: N,
    change: (command: Named<N>, before: Before) => Command | readonly Command[],
    which: (command: Named<N>) => boolean = () => true,
  ) =>
  (before: Before): readonly Command[] =>
    before.own.flatMap((command) =>
      command.do === kind && which(command as Named<N>) ? change(command as Named<N>, before) : command,
    );

/** Leaves out commands. */
export const without =
  (which: (command: Command) => boolean) =>
  ({ own }: Before): readonly Command[] =>
    own.filter((command) => !which(command));

/** Several edits one after the other. */
export const both =
  (...edits: readonly ((before: Before) => readonly Command[])[]) =>
  (before: Before): readonly Command[] =>
    edits.reduce((own, edit) => edit({ ...before, own }), before.own);

/** Fraction along the drawn line of the place nearest to a bust point, `mm` further on. */
export function beside(work: Work, side: 'left' | 'right', mm: number): number {
  const line = chainOf(work, 'line')!;
  return (nearestOnChain(line, landmark(work, `${side}/bust-point`)).length + mm) / chainLength(line);
}

/** The same work with the style line drawn from the side to the shoulder: the other way round is right as well. */
export const drawnBackwards = (commands: readonly Command[]): readonly Command[] =>
  commands.map((c): Command => {
    if (c.do === 'draw-line') return { ...c, points: [...c.points].reverse() };
    if (c.do === 'notch' || c.do === 'connect') return { ...c, at: 1 - c.at };
    if (c.do === 'slash' && c.from) return { ...c, from: c.from === 'start' ? 'end' : 'start' };
    if (c.do === 'take-out') return { ...c, end: c.end === 'start' ? 'end' : 'start' };
    return c;
  });
