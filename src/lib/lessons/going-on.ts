import { gradeStep, verdictOf } from '../grading/grade.ts';
import { apply } from '../recipe/apply.ts';
import type { Attempt, Command, Unfollowed, Work } from '../recipe/types.ts';
import { counterparts } from './counterpart.ts';
import type { LessonStep } from './types.ts';
import { workedStep } from './worked/index.ts';

/** The work on one step so far: the table before it, the commands given in it, and the table now. */
export interface SoFar {
  readonly step: LessonStep;
  readonly before: Work;
  readonly own: readonly Command[];
  readonly now: Work;
  readonly unfollowed: readonly Unfollowed[];
}

/** A turn that closed some of its dart, and not too much of it, can be gone on with. */
const closesFurther = (sofar: SoFar, dart: string): boolean =>
  sofar.now.turns
    .slice(sofar.before.turns.length)
    .filter((fact) => fact.dart === dart)
    .every(({ before, residual }) => before * residual > 0 && Math.abs(residual) < Math.abs(before));

const fresh = (name: string, used: ReadonlySet<string>): string => {
  let made = name;
  for (let n = 2; used.has(made); n++) made = `${name}-${n}`;
  return made;
};

/** Worked commands with names of their own for what they make, where the learner's stands under that name already. */
function renamed(commands: readonly Command[], own: readonly Command[]): readonly Command[] {
  const used = new Set(
    own.flatMap((c) =>
      c.do === 'notch' || c.do === 'notch-seam' ? [c.id] : c.do === 'draw-slash' ? [c.slash] : [],
    ),
  );
  const names = new Map<string, string>();
  return commands.map((c): Command => {
    if (c.do === 'notch' || c.do === 'notch-seam') return { ...c, id: fresh(c.id, used) };
    if (c.do === 'draw-slash') {
      const slash = fresh(c.slash, used);
      names.set(c.slash, slash);
      return { ...c, slash };
    }
    if (c.do === 'cut-slash') return { ...c, slash: names.get(c.slash) ?? c.slash };
    if (c.do === 'turn' && c.into !== undefined) return { ...c, into: names.get(c.into) ?? c.into };
    return c;
  });
}

/**
 * Ways to go on with a step as it is worked, without doing over or taking back anything that the learner did: what is worked and has no
 * counterpart yet. A turn that stopped short may be turned on.
 */
function waysOn(sofar: SoFar, { fabric }: Attempt): readonly (readonly Command[])[] {
  const { step, own } = sofar;
  const ways: (readonly Command[])[] = [[]];
  for (const from of [sofar.now, sofar.before]) {
    const worked = workedStep(step, from, fabric);
    for (const nearest of [false, true]) {
      const done = new Set(counterparts(own, worked, nearest).values());
      ways.push(
        worked.filter((c) => !done.has(c)),
        worked.filter((c) => !done.has(c) || (c.do === 'turn' && closesFurther(sofar, c.dart))),
      );
    }
  }
  const all = ways.flatMap((way) => way.map((_, from) => way.slice(from)));
  const known = new Map(all.map((way) => [JSON.stringify(way), renamed(way, own)]));
  return [[], ...known.values()];
}

/** The step after some more commands. */
function after(sofar: SoFar, more: readonly Command[]): SoFar {
  let { now } = sofar;
  const unfollowed = [...sofar.unfollowed];
  for (const command of more) {
    const next = apply(now, command);
    if ('work' in next) now = next.work;
    else unfollowed.push({ index: 0, command, refused: next.refused });
  }
  return { ...sofar, own: [...sofar.own, ...more], now, unfollowed };
}

function isRight(sofar: SoFar, attempt: Attempt): boolean {
  const { step, before, now, own, unfollowed } = sofar;
  const context = { before, after: now, commands: own, unfollowed, fabric: attempt.fabric, attempt };
  return verdictOf(gradeStep(step, context).findings) === 'accepted';
}

/**
 * Whether the step can still be brought to be accepted by going on from here, and each of the `further` steps after it as it is worked.
 * Yields after each way that was tried, so that whoever runs it can rest; returns the answer. Throws as `gradeStep`.
 */
export function* canBeReached(
  sofar: SoFar,
  attempt: Attempt,
  further: readonly LessonStep[],
): Generator<undefined, boolean> {
  for (const way of waysOn(sofar, attempt)) {
    if (yield* leadsOn(after(sofar, way), attempt, further)) return true;
    yield undefined;
  }
  return false;
}

/** Whether a step is right, and each further one when it is worked from there. */
function* leadsOn(
  begun: SoFar,
  attempt: Attempt,
  further: readonly LessonStep[],
): Generator<undefined, boolean> {
  let one = begun;
  for (const step of further) {
    if (!isRight(one, attempt)) return false;
    yield undefined;
    const fresh = { step, before: one.now, own: [], now: one.now, unfollowed: [] };
    one = after(fresh, workedStep(step, one.now, attempt.fabric));
  }
  return isRight(one, attempt);
}
