import { gradeLesson } from '../grading/grade.ts';
import type { Mark } from '../grading/types.ts';
import { apply } from '../recipe/apply.ts';
import { idsOf, replayByStep, type StepReplay } from '../recipe/replay.ts';
import type { Attempt, Command, Unfollowed, Work } from '../recipe/types.ts';
import { standing } from './done-over.ts';
import { canBeReached, type SoFar } from './going-on.ts';
import { stemmingFrom, type Stemming } from './stemming.ts';
import { allSteps, type Lesson, type LessonStep } from './types.ts';

/** Where what is wrong in an attempt began. */
export interface Divergence {
  /** Place, in `inOrder`, of the first command after which the worked result can no longer be reached. */
  readonly index: number;
  readonly command: Command;
  /** The step in which it was given, and the first step that shows something wrong. */
  readonly step: string;
  readonly shows: string;
  /** What each wrong finding of the attempt owes to it. */
  readonly stemming: readonly Stemming[];
}

/**
 * `right`: nothing is wrong. `goes-on`: something is, but the step can still be brought right by going on. `unknown`: it cannot, and no
 * command was found after which that came about.
 */
export type Origin =
  | { readonly kind: 'right' }
  | { readonly kind: 'goes-on' | 'unknown'; readonly shows: string }
  | ({ readonly kind: 'began' } & Divergence);

/** The attempt with its commands by the order of their steps: as it is marked. */
export function inOrder(lesson: Lesson, attempt: Attempt): Attempt {
  const ids = idsOf(lesson);
  const steps = replayByStep(attempt, ids);
  const commands = ids.flatMap((id) =>
    steps.get(id)!.commands.map((command) => (command.step === id ? command : { ...command, step: id })),
  );
  return { ...attempt, commands };
}

/**
 * One step's commands whose effect stands, with their places among all that were given in it, and the tables between them: `tables[n]` after n
 * of them.
 */
interface Course {
  readonly step: LessonStep;
  readonly commands: readonly Command[];
  readonly places: readonly number[];
  readonly given: number;
  readonly tables: readonly Work[];
  readonly unfollowed: readonly Unfollowed[];
}

function courseOf(step: LessonStep, { before, commands: given }: StepReplay): Course {
  const places = standing(before, given);
  const commands = places.map((place) => given[place]!);
  const tables: Work[] = [before];
  const unfollowed: Unfollowed[] = [];
  commands.forEach((command, index) => {
    const next = apply(tables[index]!, command);
    if ('refused' in next) unfollowed.push({ index, command, refused: next.refused });
    tables.push('work' in next ? next.work : tables[index]!);
  });
  return { step, commands, places, given: given.length, tables, unfollowed };
}

/** The places of all commands that stand, among all commands of these steps. */
function placesOf(courses: readonly Course[]): readonly number[] {
  let first = 0;
  return courses.flatMap(({ places, given }) => {
    const here = places.map((place) => first + place);
    first += given;
    return here;
  });
}

const stageOf = ({ step, commands, tables, unfollowed }: Course, n: number): SoFar => ({
  step,
  before: tables[0]!,
  own: commands.slice(0, n),
  now: tables[n]!,
  unfollowed: unfollowed.filter(({ index }) => index < n),
});

/** Prefixes that are tried before it is given up: far more than an attempt by hand has commands. */
const MOST_TRIES = 1_000;

const isWrong = ({ findings }: Mark): boolean => findings.some(({ state }) => state === 'wrong');

/**
 * Looks for the first command after which the first step with something wrong can no longer be brought to be accepted by going on,
 * without doing over or taking back anything: what was drawn over again later is not it, right or wrong. From the end backwards, through earlier steps
 * too where the step could not be worked from the table it began on. A generator that yields often, so that it can be run in slices.
 * Throws as `gradeLesson`.
 */
export function* lookForOrigin(lesson: Lesson, attempt: Attempt): Generator<undefined, Origin> {
  const ordered = inOrder(lesson, attempt);
  // What was given is looked at as well: a file may say something else of it.
  const steps = allSteps(lesson);
  const marks = gradeLesson({ steps }, ordered);
  // A step that was not begun may find fault already with what it is to be begun on.
  const begun = steps.findIndex(({ id }) => id === ordered.commands.at(-1)?.step) + 1;
  const at = marks.slice(0, begun).findIndex(isWrong);
  if (at < 0) return { kind: 'right' };
  const shows = steps[at]!.id;
  yield undefined;
  const replayed = replayByStep(ordered, idsOf(lesson));
  const courses = steps.slice(0, at + 1).map((step) => courseOf(step, replayed.get(step.id)!));
  let tries = 0;
  for (let s = at; s >= 0; s--) {
    const course = courses[s]!;
    const further = steps.slice(s + 1, at + 1);
    for (let n = course.commands.length; n >= 0; n--) {
      yield undefined;
      if (tries++ > MOST_TRIES) return { kind: 'unknown', shows };
      const stage = stageOf(course, n);
      if (!(yield* canBeReached(stage, ordered, further))) continue;
      const index =
        placesOf(courses)[courses.slice(0, s).reduce((sum, { places }) => sum + places.length, n)];
      // The first try, or nothing that was done since stands.
      if (index === undefined) return { kind: 'goes-on', shows };
      const command = ordered.commands[index]!;
      const stemming = stemmingFrom(steps, ordered, index, marks.slice(0, begun));
      return { kind: 'began', index, command, step: command.step ?? shows, shows, stemming };
    }
  }
  return { kind: 'unknown', shows };
}

/** As `lookForOrigin`, in one go: where it began, or undefined where nothing is wrong, all can be mended by going on, or nobody knows. */
export function firstDivergence(lesson: Lesson, attempt: Attempt): Divergence | undefined {
  const search = lookForOrigin(lesson, attempt);
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value.kind === 'began' ? step.value : undefined;
}
