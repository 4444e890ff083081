import { lessonIds, loadLesson } from '../../../src/cli/load-lessons.ts';
import { gradeStep } from '../../../src/lib/grading/grade.ts';
import type { Mark } from '../../../src/lib/grading/types.ts';
import { blockOf } from '../../../src/lib/lessons/block.ts';
import type { Lesson, LessonStep } from '../../../src/lib/lessons/types.ts';
import { workedStep } from '../../../src/lib/lessons/worked/index.ts';
import { FIGURES } from '../../../src/lib/pattern/figures.ts';
import type { StepReplay } from '../../../src/lib/recipe/replay.ts';
import { startWork } from '../../../src/lib/recipe/start.ts';
import type { Attempt, Command, Fabric, Work } from '../../../src/lib/recipe/types.ts';
import { IN_LESSONS, OF_NO_KIND, type LessonMistake } from './lesson-mistakes.ts';
import { between, hasFrom, pick } from './mistake.ts';
import { carriedOut, dice, followed, trembling, TREMBLE } from './simulate.ts';

/*
 * Attempts at any step of the course, on any of its figures and fabrics, by somebody who chooses what the step leaves free and trembles.
 * Invented data, for the test only.
 */

export interface LessonAttempt {
  /** What was done wrong; `none` for nothing, or for what comes of no procedure. */
  readonly truth: string;
  readonly lesson: string;
  readonly step: LessonStep;
  readonly replayed: StepReplay;
  readonly attempt: Attempt;
  readonly mark: Mark;
}

const LESSONS = lessonIds().map((id) => loadLesson(id)!);
const FIGURE_CODES = Object.keys(FIGURES);
/** So many people, who choose differently, work each lesson on each figure. */
const PEOPLE = 3;

interface Place {
  readonly lesson: Lesson;
  readonly fabric: Fabric;
  readonly figure: string;
  readonly person: number;
}

const attemptAt = ({ lesson, fabric, figure }: Place, commands: readonly Command[]): Attempt => ({
  format: 'pin-and-pivot/recipe',
  version: 1,
  block: { ...blockOf(lesson), figure },
  fabric,
  seed: 0,
  lesson: { id: lesson.id, content: lesson.content },
  commands,
});

const marked = (place: Place, step: LessonStep, before: Work, own: readonly Command[], after: Work): Mark =>
  gradeStep(step, {
    before,
    after,
    commands: own,
    unfollowed: [],
    fabric: place.fabric,
    attempt: attemptAt(place, own),
  });

/** The step as this person works it rightly: what is free is chosen otherwise than shown, where that is accepted. */
function chosen(place: Place, step: LessonStep, before: Work, chance: () => number): readonly Command[] {
  let right = workedStep(step, before, place.fabric);
  right.forEach((c, i) => {
    const changed: Command =
      hasFrom(c) && 'on' in c.from
        ? { ...c, from: { ...c.from, at: c.from.at + between(chance, -0.12, 0.12) } }
        : c.do === 'back-off'
          ? { ...c, by: c.by * between(chance, 0.8, 1.2) }
          : c.do === 'fullness'
            ? {
                ...c,
                before: c.before * between(chance, 0.7, 1.3),
                after: c.after * between(chance, 0.7, 1.3),
              }
            : c;
    if (changed === c) return;
    const own = right.map((one, j) => (j === i ? changed : one));
    const after = followed(before, own);
    if (after && marked(place, step, before, own, after).verdict === 'accepted') right = own;
  });
  return right;
}

const tables = new Map<string, Work>();

/** The table before a step, worked rightly up to there by one of the people. */
function tableBefore(place: Place, index: number): Work {
  const key = `${place.lesson.id} ${place.figure} ${place.fabric} ${place.person} ${index}`;
  const known = tables.get(key);
  if (known) return known;
  const last = place.lesson.steps[index - 1];
  const earlier = last && tableBefore(place, index - 1);
  const work =
    last && earlier
      ? carriedOut(earlier, chosen(place, last, earlier, dice(place.person * 1000 + index)))
      : startWork({ ...blockOf(place.lesson), figure: place.figure });
  tables.set(key, work);
  return work;
}

/** One attempt at one step, drawn by chance; undefined where the mistake cannot be made there, or is none: the step is not refused. */
function simulate(
  { truth, at, make }: LessonMistake,
  seed: number,
  refused: boolean,
): LessonAttempt | undefined {
  const chance = dice(seed);
  const all = LESSONS.flatMap((lesson) => lesson.steps.map((step, index) => ({ lesson, step, index })));
  const { lesson, step, index } = pick(
    chance,
    at ? all.filter((one) => at.some(([l, s]) => l === one.lesson.id && s === one.step.id)) : all,
  );
  const [fabric, figure] = [pick(chance, lesson.fabrics), pick(chance, FIGURE_CODES)];
  const place: Place = { lesson, fabric, figure, person: Math.floor(chance() * PEOPLE) };
  const before = tableBefore(place, index);
  const right = chosen(place, step, before, chance);
  const angles = carriedOut(before, right)
    .turns.slice(before.turns.length)
    .map(({ angle }) => angle);
  const made = make({ chance, variant: undefined, step: step.id, before, right, angles });
  if (!made) return undefined;
  const own = trembling(made.own, before, chance, TREMBLE);
  const after = followed(before, own);
  if (!after) return undefined;
  const mark = marked(place, step, before, own, after);
  if (refused && mark.verdict !== 'needsWork') return undefined;
  const replayed = { before, after, commands: own, unfollowed: [] };
  return { truth, lesson: lesson.id, step, replayed, attempt: attemptAt(place, own), mark };
}

function* attempts(
  kinds: readonly LessonMistake[],
  count: number,
  seed: number,
  refused: boolean,
): Generator<LessonAttempt> {
  for (let made = 0, next = seed; made < count; made++) {
    const kind = kinds[made % kinds.length]!;
    let one: LessonAttempt | undefined;
    while (!one) one = simulate(kind, next++, refused);
    yield one;
  }
}

/** So many attempts at steps of the course with mistakes that the step is refused for, as many of each kind. */
export const wrongInLessons = (count: number, seed = 1): Generator<LessonAttempt> =>
  attempts(IN_LESSONS, count, seed, true);

/** The same with faults that come of no procedure. */
export const oddInLessons = (count: number, seed = 1): Generator<LessonAttempt> =>
  attempts(OF_NO_KIND, count, seed, true);

/** So many right attempts at steps of the course in which something is done. */
export const rightInLessons = (count: number, seed = 1): Generator<LessonAttempt> =>
  attempts(
    [{ truth: 'none', make: ({ right }) => (right.length > 0 ? { own: right } : undefined) }],
    count,
    seed,
    false,
  );

export const LESSON_TRUTHS: readonly string[] = [...new Set(IN_LESSONS.map(({ truth }) => truth))];
