import { gradeStep } from '../grading/grade.ts';
import type { Finding, Mark, StepRule } from '../grading/types.ts';
import { FIGURES } from '../pattern/figures.ts';
import { idsOf, replayByStep, type StepReplay } from '../recipe/replay.ts';
import { measuresOf } from '../recipe/start.ts';
import type { Attempt, Command, Unfollowed, Work } from '../recipe/types.ts';
import { growthTo, isOfPlace } from './bodies-places.ts';
import type { Lesson } from './types.ts';

/**
 * How a construction stands on another body:
 * - `holds`: every step that was right on the own body is right here, too;
 * - `place`: right, but a place that goes along as a share of its line or edge lies outside its band here and has to be marked anew;
 * - `fails`: something is off or missing that was right on the own body;
 * - `refused`: a command that was followed on the own body cannot be followed here.
 */
export type Outcome = 'holds' | 'place' | 'fails' | 'refused';

export interface OnBody {
  /** Code of the demo figure. */
  readonly figure: string;
  readonly outcome: Outcome;
  /** The first step that is not right here; undefined where all hold. */
  readonly step?: string;
  /** What is off or missing in that step, the worst kind first. Numbers as in findings: mm, radians, signed. */
  readonly findings: readonly Finding[];
  /** The first command that cannot be followed here; `index` counts in the attempt's list. */
  readonly refused?: Unfollowed;
  /** A turn of that step whose angle was typed: that angle was read from one body. Radians. */
  readonly typed?: number;
  /** The table after that step; where all hold, after the last one. */
  readonly work: Work;
}

/** What the own body says, to hold the others against. */
export interface OwnBody {
  /** Code of the demo figure; undefined for own measures. */
  readonly figure: string | undefined;
  /** Marks of the steps that are accepted here, by step: only these are looked at on other bodies. */
  readonly marks: ReadonlyMap<string, Mark>;
  /** Steps in which something was done that is not accepted here: they are not looked at anywhere. */
  readonly left: readonly string[];
  /** Commands that are not followed here either, by their index. */
  readonly unfollowed: ReadonlySet<number>;
  /** How many readings were left out: they are numbers of this body, no construction. */
  readonly readings: number;
  /** Steps that ask for readings and nothing else; `read` of them are accepted. */
  readonly toRead: number;
  readonly read: number;
  /** The table at the end. */
  readonly work: Work;
}

/** Readings say how large something is on one body. */
const isReading = ({ do: name }: Command): boolean => name === 'read';
const READINGS = 'readings';
const isReadOff = ({ checks }: StepRule): boolean =>
  checks.length > 0 && checks.every(({ check }) => check === READINGS);

/** The rules of a lesson without what is asked of one body's numbers; a step with no other rule is left out. */
const rulesOf = (lesson: Lesson): readonly StepRule[] =>
  lesson.steps
    .map(({ id, checks }) => ({ id, checks: checks.filter(({ check }) => check !== READINGS) }))
    .filter(({ checks }) => checks.length > 0);

interface Marked {
  readonly steps: ReadonlyMap<string, StepReplay>;
  readonly marks: ReadonlyMap<string, Mark>;
}

function marked(lesson: Lesson, attempt: Attempt): Marked {
  const steps = replayByStep(attempt, idsOf(lesson));
  const marks = rulesOf(lesson).map((rule): [string, Mark] => {
    const context = { ...steps.get(rule.id)!, fabric: attempt.fabric, attempt };
    return [rule.id, gradeStep(rule, context)];
  });
  return { steps, marks: new Map(marks) };
}

const lastOf = (lesson: Lesson, steps: Marked['steps']): Work => steps.get(lesson.steps.at(-1)!.id)!.after;

/** How many steps only read off, and how many of them are right. */
function readOff(lesson: Lesson, attempt: Attempt, steps: Marked['steps']): Pick<OwnBody, 'toRead' | 'read'> {
  const only = lesson.steps.filter(isReadOff);
  const right = only.filter((rule) => {
    const context = { ...steps.get(rule.id)!, fabric: attempt.fabric, attempt };
    return gradeStep(rule, context).verdict === 'accepted';
  });
  return { toRead: only.length, read: right.length };
}

/** The attempt on its own body. Throws as `gradeLesson`. */
export function onOwnBody(lesson: Lesson, attempt: Attempt): OwnBody {
  const { steps, marks } = marked(lesson, attempt);
  return {
    figure: 'figure' in attempt.block ? attempt.block.figure : undefined,
    marks: new Map([...marks].filter(([, { verdict }]) => verdict === 'accepted')),
    left: [...marks.values()]
      .filter(({ step, verdict }) => verdict !== 'accepted' && steps.get(step)!.commands.length > 0)
      .map(({ step }) => step),
    unfollowed: new Set([...steps.values()].flatMap(({ unfollowed }) => unfollowed.map((u) => u.index))),
    readings: attempt.commands.filter(isReading).length,
    ...readOff(lesson, attempt, steps),
    work: lastOf(lesson, steps),
  };
}

/** The demo figures but the own one, in the order of their codes. */
export const otherFigures = ({ figure }: Pick<OwnBody, 'figure'>): readonly string[] =>
  Object.keys(FIGURES).filter((code) => code !== figure);

/** What the same commands make on the block of a demo figure in the same form, without readings; `index`: places in the own list. */
function carried({ commands, block: { form }, ...rest }: Attempt, figure: string) {
  const kept = commands.map((command, index) => ({ command, index })).filter((c) => !isReading(c.command));
  const block = form === undefined ? { figure } : { figure, form };
  return {
    attempt: { ...rest, block, commands: kept.map(({ command }) => command) },
    index: kept.map(({ index }) => index),
  };
}

/**
 * The same commands (anchors and intent) on the block of a demo figure in the same form, marked step by step as the work goes on
 * there. Steps that are not accepted on the own body are not looked at. Pure. Throws as `gradeLesson`; RangeError for a
 * figure that does not exist.
 */
export function onBody(lesson: Lesson, attempt: Attempt, own: OwnBody, figure: string): OnBody {
  const there = carried(attempt, figure);
  const { steps, marks } = marked(lesson, there.attempt);
  const growth = growthTo(measuresOf(attempt.block), figure);
  let place: OnBody | undefined;
  for (const [id, mark] of marks) {
    const right = own.marks.get(id);
    if (!right || mark.verdict === 'accepted') continue;
    const { after, commands, unfollowed } = steps.get(id)!;
    const refused = unfollowed
      .map((one) => ({ ...one, index: there.index[one.index]! }))
      .find(({ index }) => !own.unfollowed.has(index));
    const open = mark.findings.filter(({ state }) => state === 'wrong' || state === 'missing');
    const mild = (finding: Finding): boolean => isOfPlace(finding, right.findings, growth);
    const findings = [...open.filter((f) => !mild(f)), ...open.filter(mild)];
    const seen = { figure, step: id, findings, work: after };
    if (refused) return { ...seen, outcome: 'refused', refused };
    // A place out of its band is no reason to look no further: what is off later on counts for more.
    if (open.length > 0 && open.every(mild)) place ??= { ...seen, outcome: 'place' };
    else return { ...seen, outcome: 'fails', ...typedIn(commands) };
  }
  return place ?? { figure, outcome: 'holds', findings: [], work: lastOf(lesson, steps) };
}

/** On all other demo figures, one at a time, so that a page can show each as it comes. Throws as `onBody`. */
export function* onBodies(lesson: Lesson, attempt: Attempt, own: OwnBody): Generator<OnBody, void> {
  for (const figure of otherFigures(own)) yield onBody(lesson, attempt, own, figure);
}

/** The last turn with a typed angle. */
function typedIn(commands: readonly Command[]): Pick<OnBody, 'typed'> {
  const angles = commands.flatMap((command) =>
    (command.do === 'turn' || command.do === 'pivot') && 'angle' in command.by ? [command.by.angle] : [],
  );
  const typed = angles.at(-1);
  return typed === undefined ? {} : { typed };
}
