import { lessonIds, loadLesson } from '../../../src/cli/load-lessons.ts';
import { chainLength } from '../../../src/lib/geometry/chain.ts';
import { findEdge } from '../../../src/lib/pattern/outline.ts';
import { blockOf } from '../../../src/lib/lessons/block.ts';
import { drillLesson, type DrillWords } from '../../../src/lib/lessons/drills/lesson.ts';
import { EXERCISES, newest, type Drill } from '../../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../../src/lib/lessons/drills/variant.ts';
import type { Lesson } from '../../../src/lib/lessons/types.ts';
import { workedStep } from '../../../src/lib/lessons/worked/index.ts';
import { FIGURES } from '../../../src/lib/pattern/figures.ts';
import { apply } from '../../../src/lib/recipe/apply.ts';
import '../../../src/lib/recipe/commands/index.ts';
import { startWork } from '../../../src/lib/recipe/start.ts';
import type { Command, Fabric, Work } from '../../../src/lib/recipe/types.ts';
import { COURSE, type CourseMistake } from './course-mistakes.ts';
import { DRAWING, DRAWING_STEPS } from './drawing-mistakes.ts';
import { FINISHING, FINISHING_STEPS } from './finishing-mistakes.ts';
import { hasFrom, isMove, pick, type Mistake } from './mistake.ts';

/*
 * Wrong attempts with a known cause, made apart from the grading code: a drill, or a lesson of the course, is worked rightly up to a step,
 * and in that step one mistake is made, with the trembling of a hand on all that is placed freely. Invented data, for the test only.
 */

/** Standard deviation of a pointer, mm at full size: 0.8 mm at half scale. */
export const TREMBLE = 1.6;

export interface Simulated {
  /** What was done wrong; `none` for a right attempt. */
  readonly truth: string;
  readonly amount: number | undefined;
  readonly before: Work;
  readonly after: Work;
  readonly own: readonly Command[];
  readonly right: readonly Command[];
}

/** mulberry32 (public domain, T. Ettinger): chance for the test, unlike the generator under test. */
export function dice(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
/** Box and Muller's normal deviate. */
const normal = (chance: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());

/** The kinds that there were when the seeds were chosen: which drill a seed gives hangs on their number. */
const DRAWN = EXERCISES.slice(0, EXERCISES.indexOf('line') + 1);

const WORDS: DrillWords = {
  title: () => 'A drill',
  summary: () => '',
  step: (_, id) => ({ title: id, text: [], hints: [] }),
};

/** One kind of mistake: what it is, and where it is made; `none` is a right attempt. */
interface Kind {
  readonly truth: string;
  readonly simulate: (seed: number, sd: number) => Simulated | undefined;
}

/**
 * The hand's trembling on what is placed freely: where lines begin, how far a part is turned by hand, lengths that are dragged (every second
 * time; typed ones do not tremble), lengths and angles that are read off the paper.
 */
export function trembling(
  own: readonly Command[],
  before: Work,
  chance: () => number,
  sd: number,
): readonly Command[] {
  const dragged = chance() < 0.5 ? sd : 0;
  const off = (mm: number, by: number): number => Math.max(0, mm + normal(chance) * by);
  return own.map((c): Command => {
    if (hasFrom(c) && 'on' in c.from) {
      const edge = findEdge(before.opened!, c.from.on);
      const length = edge ? chainLength(edge.chain) : 200;
      const at = Math.min(0.98, Math.max(0.02, c.from.at + (normal(chance) * sd) / length));
      return { ...c, from: { on: c.from.on, at } };
    }
    // A part that is let go of without asking for the legs lies off by the trembling at some 180 mm from the pin.
    if (isMove(c) && 'angle' in c.by)
      return { ...c, by: { angle: c.by.angle + (normal(chance) * sd) / 180 } };
    if (c.do === 'back-off' && c.by > 0) return { ...c, by: off(c.by, dragged) };
    if (c.do === 'smooth-seam') return { ...c, reach: off(c.reach, dragged) };
    if (c.do === 'fullness') return { ...c, before: off(c.before, dragged), after: off(c.after, dragged) };
    if (c.do === 'read') return { ...c, value: off(c.value, c.what === 'dart-angle' ? sd / 180 : sd) };
    return c;
  });
}

export const followed = (before: Work, commands: readonly Command[]): Work | undefined =>
  commands.reduce<Work | undefined>((work, command) => {
    const next = work && apply(work, command);
    return next && 'work' in next ? next.work : undefined;
  }, before);

export const carriedOut = (before: Work, commands: readonly Command[]): Work => {
  let work = before;
  for (const command of commands) {
    const next = apply(work, command);
    if ('work' in next) work = next.work;
  }
  return work;
};

const attempt = (
  truth: string,
  make: Mistake<never>,
  at: Parameters<Mistake<never>>[0],
  sd: number,
): Simulated | undefined => {
  const { chance, before, right } = at;
  const made = make(at);
  if (!made) return undefined;
  const own = trembling(made.own, before, chance, sd);
  const after = followed(before, own);
  // What the table refuses nobody has done.
  return after && { truth, amount: made.amount?.(own), before, after, own, right };
};

const rightly: Mistake<unknown> = ({ right }) => ({ own: right });

/** One attempt at one step of a random drill. Undefined where the mistake cannot be made in the step drawn. */
function atDrill(
  truth: string,
  make: Mistake,
  seed: number,
  sd: number,
  steps?: readonly string[],
): Simulated | undefined {
  const chance = dice(seed);
  const exercise = DRAWN[Math.floor(chance() * DRAWN.length)]!;
  const drill: Drill = {
    exercise,
    seed: Math.floor(chance() * 1e6),
    fabric: 'woven',
    band: 'usual',
    hints: 0,
  };
  const variant = variantOf(newest(drill));
  const lesson = drillLesson(variant, WORDS);
  const target = Math.floor(chance() * lesson.steps.length);
  if (steps && !steps.includes(lesson.steps[target]!.id)) return undefined;
  let before = startWork(blockOf(lesson));
  for (const step of lesson.steps.slice(0, target))
    before = carriedOut(before, trembling(workedStep(step, before, 'woven'), before, chance, sd / 4));
  const step = lesson.steps[target]!;
  const right = workedStep(step, before, 'woven');
  const turns = carriedOut(before, right).turns.slice(before.turns.length);
  const angles = turns.map((t) => t.angle);
  return attempt(
    truth,
    make,
    { chance, variant: variant as never, step: step.id, before, right, angles },
    sd,
  );
}

const LESSONS = new Map(lessonIds().map((id) => [id, loadLesson(id)!]));
const FIGURE_CODES = Object.keys(FIGURES);
const tables = new Map<string, Work>();

/** The table before a step of a lesson, worked rightly up to there. */
function tableBefore(lesson: Lesson, figure: string, fabric: Fabric, index: number): Work {
  const key = `${lesson.id} ${figure} ${fabric} ${index}`;
  const known = tables.get(key);
  if (known) return known;
  const last = lesson.steps[index - 1];
  const earlier = last && tableBefore(lesson, figure, fabric, index - 1);
  const work =
    last && earlier
      ? carriedOut(earlier, workedStep(last, earlier, fabric))
      : startWork({ ...blockOf(lesson), figure });
  tables.set(key, work);
  return work;
}

/** One attempt at one of these steps of the course, on a demo figure. */
function atCourse({ truth, at, make }: CourseMistake, seed: number, sd: number): Simulated | undefined {
  const chance = dice(seed);
  const [id, stepId] = pick(chance, at);
  const lesson = LESSONS.get(id)!;
  const fabric = pick(chance, lesson.fabrics);
  const index = lesson.steps.findIndex((s) => s.id === stepId);
  const step = lesson.steps[index]!;
  const before = tableBefore(lesson, pick(chance, FIGURE_CODES), fabric, index);
  const right = workedStep(step, before, fabric);
  return attempt(
    truth,
    make,
    { chance, variant: undefined as never, step: stepId, before, right, angles: [] },
    sd,
  );
}

const KINDS: readonly Kind[] = [
  ...[
    { mistakes: DRAWING, steps: DRAWING_STEPS },
    { mistakes: FINISHING, steps: FINISHING_STEPS },
  ].flatMap(({ mistakes, steps }) =>
    Object.entries(mistakes).map(([truth, make]): Kind => ({
      truth,
      simulate: (seed, sd) => atDrill(truth, make, seed, sd, steps),
    })),
  ),
  ...COURSE.map((one): Kind => ({ truth: one.truth, simulate: (seed, sd) => atCourse(one, seed, sd) })),
];

export const TRUTHS: readonly string[] = [...new Set(KINDS.map(({ truth }) => truth))];

/** A right attempt at a step of a drill or, every fourth time, at one of the steps of the course in which mistakes are made. */
export const simulateRight = (seed: number, sd = TREMBLE): Simulated | undefined =>
  seed % 4 === 0
    ? atCourse({ truth: 'none', at: COURSE.flatMap(({ at }) => at), make: rightly }, seed, sd)
    : atDrill('none', rightly, seed, sd);

/**
 * So many attempts with mistakes, as many of each kind: seeds are drawn until the mistake can be made in the step drawn.
 */
export function* wrongAttempts(count: number, seed = 1): Generator<Simulated> {
  for (let made = 0, next = seed; made < count; made++) {
    const kind = KINDS[made % KINDS.length]!;
    let one: Simulated | undefined;
    while (!one) one = kind.simulate(next++, TREMBLE);
    yield one;
  }
}
