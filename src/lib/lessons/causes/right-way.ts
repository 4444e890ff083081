import { gradeStep } from '../../grading/grade.ts';
import type { Mark } from '../../grading/types.ts';
import { apply } from '../../recipe/apply.ts';
import type { Attempt, Command, Work } from '../../recipe/types.ts';
import { counterparts } from '../counterpart.ts';
import type { LessonStep } from '../types.ts';
import { choicesOf, type Choice } from './choices.ts';

/** A step from a table on: how a list of commands would be marked there. */
export interface Marking {
  readonly step: LessonStep;
  readonly before: Work;
  readonly attempt: Attempt;
}

/** The mark that commands get on this table; undefined when one of them cannot be followed. Throws as `gradeStep`. */
export function markOf({ step, before, attempt }: Marking, commands: readonly Command[]): Mark | undefined {
  let after = before;
  for (const command of commands) {
    const next = apply(after, command);
    if ('refused' in next) return undefined;
    after = next.work;
  }
  return gradeStep(step, { before, after, commands, unfollowed: [], fabric: attempt.fabric, attempt });
}

const accepted = (marking: Marking, commands: readonly Command[]): boolean =>
  markOf(marking, commands)?.verdict === 'accepted';

const replaced = (commands: readonly Command[], i: number, by: Command): readonly Command[] =>
  commands.map((c, j) => (j === i ? by : c));

/** Whether a number of the i-th command could clearly be another, and the table would still be accepted. */
function* isFree(
  marking: Marking,
  right: readonly Command[],
  i: number,
  { value, other, with: changed }: Choice,
): Generator<undefined, boolean> {
  for (const one of [value + other, value - other]) {
    yield undefined;
    if (accepted(marking, replaced(right, i, changed(one)))) return true;
  }
  return false;
}

/** Steps whose outcome has more than one form, whatever the numbers: the course of a line, and what to do with what is left over. */
const MANY_FORMS: ReadonlySet<string> = new Set(['line-passes', 'leftover']);

/**
 * Whether a step has one right table from the table it begins on: there is a right way, and none of the numbers in it can be clearly another
 * without the table being refused. `right`: a way that is accepted. Yields after each try. Throws as `gradeStep`.
 */
export function* isDetermined(marking: Marking, right: readonly Command[]): Generator<undefined, boolean> {
  if (marking.step.checks.some(({ check }) => MANY_FORMS.has(check))) return false;
  if (right.length === 0 || !accepted(marking, right)) return false;
  for (const [i, command] of right.entries())
    for (const choice of choicesOf(command)) if (yield* isFree(marking, right, i, choice)) return false;
  return true;
}

/**
 * Whether commands differ from the right way only in numbers that may be others: then the difference says nothing about what went wrong.
 * Yields after each try.
 */
export function* onlyFree(
  marking: Marking,
  right: readonly Command[],
  commands: readonly Command[],
): Generator<undefined, boolean> {
  if (commands.length !== right.length) return false;
  for (const [i, c] of right.entries()) {
    const [was, is] = [choicesOf(c), choicesOf(commands[i]!)];
    if (was.length !== is.length) return false;
    // With the right numbers in it, it has to be the right command.
    const mended = was.reduce((one, { value }, n) => choicesOf(one)[n]!.with(value), commands[i]!);
    if (JSON.stringify(mended) !== JSON.stringify(c)) return false;
    for (const [n, choice] of was.entries())
      if (choice.value !== is[n]!.value && !(yield* isFree(marking, right, i, choice))) return false;
  }
  return true;
}

type Maker = Extract<Command, { do: 'draw-slash' | 'pivot' }>;
const isMaker = (c: Command): c is Maker => c.do === 'draw-slash' || c.do === 'pivot';

/** How unlike two slashes are: by where they begin on the same edge, else by their names. */
function unlike(a: Maker, b: Maker): number {
  if ('on' in a.from && 'on' in b.from && a.from.on === b.from.on) return Math.abs(a.from.at - b.from.at);
  return a.slash === b.slash ? 2 : 3;
}

/** The learner's slash for each of the worked ones, nearest first; one that was drawn over counts as it was drawn last. */
function slashPairs(own: readonly Command[], worked: readonly Command[]): ReadonlyMap<Maker, Maker> {
  const last = new Map(own.filter(isMaker).map((c) => [c.slash, c]));
  const all = worked
    .filter(isMaker)
    .flatMap((w) => [...last.values()].map((o) => ({ w, o, far: unlike(w, o) })));
  all.sort((p, q) => p.far - q.far);
  const found = new Map<Maker, Maker>();
  const taken = new Set<Maker>();
  for (const { w, o } of all) {
    if (found.has(w) || taken.has(o)) continue;
    found.set(w, o);
    taken.add(o);
  }
  return found;
}

/** The worked commands with the learner's names for the slashes that are drawn in the step. */
function inOwnNames(worked: readonly Command[], pairs: ReadonlyMap<Maker, Maker>): readonly Command[] {
  const names = new Map([...pairs].map(([w, o]) => [w.slash, o.slash]));
  // A slash that the learner has not drawn must not take a name that another one has now.
  for (const c of worked)
    if (isMaker(c) && !names.has(c.slash) && [...names.values()].includes(c.slash))
      names.set(c.slash, `${c.slash}-worked`);
  const named = (id: string): string => names.get(id) ?? id;
  return worked.map((c): Command => {
    if (isMaker(c) || c.do === 'cut-slash') return { ...c, slash: named(c.slash) };
    return c.do === 'turn' && c.into !== undefined ? { ...c, into: named(c.into) } : c;
  });
}

/**
 * Of the right ways to work a step the one that is most the learner's own: under the learner's names, and with all that the learner chose
 * rightly. `worked`: the step as it is worked. Yields after each try. Throws as `gradeStep`.
 */
export function* ownRightWay(
  marking: Marking,
  own: readonly Command[],
  worked: readonly Command[],
): Generator<undefined, readonly Command[]> {
  const pairs = slashPairs(own, worked);
  let right = inOwnNames(worked, pairs);
  const stands = new Map([...counterparts(own, right)].filter(([o]) => !isMaker(o)));
  for (const [w, o] of pairs) stands.set(o, right[worked.indexOf(w)]!);
  // In the learner's order, with what the learner did besides, where that does no harm.
  const done = new Set(stands.values());
  const inOrder = [...own.map((c) => stands.get(c) ?? c), ...right.filter((c) => !done.has(c))];
  yield undefined;
  if (own.length > 0 && accepted(marking, inOrder)) right = inOrder;
  for (let i = 0; i < right.length; i++) {
    const mine = own.findLast((c) => stands.get(c) === right[i]);
    if (mine === undefined) continue;
    for (const closer of [wholly(mine), begunAs(mine), ...numbersOf(mine)]) {
      const now = right[i]!;
      const candidate = closer(now);
      if (candidate === undefined || JSON.stringify(candidate) === JSON.stringify(now)) continue;
      yield undefined;
      const changed = replaced(right, i, candidate);
      if (accepted(marking, changed)) right = changed;
    }
  }
  return right;
}

/** Makes a worked command more the learner's; undefined where that cannot be done. */
type Closer = (worked: Command) => Command | undefined;

const wholly =
  (mine: Command): Closer =>
  (worked) =>
    worked.do === mine.do ? mine : undefined;

const begunAs =
  (mine: Command): Closer =>
  (worked) =>
    isMaker(worked) && isMaker(mine) ? { ...worked, from: mine.from } : undefined;

const numbersOf = (mine: Command): readonly Closer[] =>
  choicesOf(mine).map((choice, n): Closer => (worked) => {
    if (worked.do !== mine.do) return undefined;
    return choicesOf(worked)[n]?.with(choice.value);
  });
