import { blockOf } from '../../../src/lib/lessons/block.ts';
import type { Lesson } from '../../../src/lib/lessons/types.ts';
import { workedStep } from '../../../src/lib/lessons/worked/index.ts';
import { replayByStep } from '../../../src/lib/recipe/replay.ts';
import type { Attempt, Command, Fabric, Work } from '../../../src/lib/recipe/types.ts';

type Verdict = 'accepted' | 'needsWork' | 'notReady';

/** What an edit of a step's commands can see: the worked commands of the step, and the table before it. */
export interface Own {
  readonly own: readonly Command[];
  readonly work: Work;
}

/** A golden attempt of one step of a course lesson: the worked solution up to the step, with the step's own commands edited. */
export interface CourseCase {
  readonly step: string;
  readonly name: string;
  readonly verdict: Verdict;
  /** Codes of the findings that are wrong or missing; exactly these. */
  readonly codes: readonly string[];
  /** Codes of the causes named in them; exactly these. */
  readonly causes: readonly string[];
  readonly figure: string | undefined;
  readonly fabric: Fabric | undefined;
  readonly edit: (own: Own) => readonly Loose[];
  /** Edits the steps before as well. */
  readonly earlier: (commands: readonly Command[]) => readonly Loose[];
}

/** A command as an edit writes it: without a step it gets the one it stands in. */
export type Loose = Command extends infer C ? (C extends Command ? C : never) : never;

type Options = Partial<Omit<CourseCase, 'step' | 'name' | 'verdict'>>;

const make = (step: string, name: string, verdict: Verdict, options: Options): CourseCase => ({
  step,
  name,
  verdict,
  codes: [],
  causes: [],
  figure: undefined,
  fabric: undefined,
  edit: ({ own }) => own,
  earlier: (commands) => commands,
  ...options,
});

/** Nothing of the step is done: not ready, with these codes missing. */
export const start = (step: string, codes: readonly string[]): CourseCase =>
  make(step, 'start', 'notReady', { codes, edit: () => [] });
export const pass = (step: string, name: string, options: Options = {}): CourseCase =>
  make(step, `pass-${name}`, 'accepted', options);
/** Something is missing still: neither accepted nor wrong. */
export const undone = (step: string, name: string, options: Options): CourseCase =>
  make(step, name, 'notReady', options);
/** Named after its first code: `dart-moved/pivot` → `fail-dart-moved-pivot`, with a word more where one code has several. */
export const fail = (
  step: string,
  codes: readonly string[],
  word: string,
  options: Options = {},
): CourseCase =>
  make(step, `fail-${codes[0]!.replace('/', '-')}${word === '' ? '' : `-${word}`}`, 'needsWork', {
    codes,
    ...options,
  });

/** The attempt of a case. Throws when the lesson has no such step. */
export function courseAttempt(lesson: Lesson, one: CourseCase): Attempt {
  const fabric = one.fabric ?? lesson.fabrics[0]!;
  const block = { ...blockOf(lesson), ...(one.figure && { figure: one.figure }) };
  const ids = lesson.steps.map((s) => s.id);
  const at = ids.indexOf(one.step);
  if (at < 0) throw new Error(`${lesson.id} has no step ${one.step}`);
  const attempt = (commands: readonly Command[]): Attempt => ({
    format: 'pin-and-pivot/recipe',
    version: 1,
    lesson: { id: lesson.id, content: lesson.content },
    block,
    fabric,
    seed: 0,
    commands,
  });
  const before = (commands: readonly Command[], id: string): Work =>
    replayByStep(attempt(commands), ids).get(id)!.before;
  let commands: readonly Command[] = [];
  for (const step of lesson.steps.slice(0, at))
    commands = [...commands, ...workedStep(step, before(commands, step.id), fabric)];
  commands = one.earlier(commands) as readonly Command[];
  const step = lesson.steps[at]!;
  const work = before(commands, step.id);
  const own = workedStep(step, work, fabric);
  const edited = one.edit({ own, work }).map((command) => ({ ...command, step: command.step ?? step.id }));
  return attempt([...commands, ...(edited as readonly Command[])]);
}
