import { distance } from '../../../src/lib/geometry/point.ts';
import type { Point } from '../../../src/lib/geometry/types.ts';
import { gradeLesson } from '../../../src/lib/grading/grade.ts';
import { isBack, ownFront, piecesFor } from '../../../src/lib/grading/table.ts';
import { blockOf } from '../../../src/lib/lessons/block.ts';
import { drillLesson, type DrillWords } from '../../../src/lib/lessons/drills/lesson.ts';
import { EXERCISES, SECOND_DRAW, type Drill, type Variant } from '../../../src/lib/lessons/drills/types.ts';
import type { Lesson } from '../../../src/lib/lessons/types.ts';
import { baseId } from '../../../src/lib/pattern/copy.ts';
import { outlineOf } from '../../../src/lib/pattern/outline.ts';
import type { Piece } from '../../../src/lib/pattern/types.ts';
import '../../../src/lib/recipe/commands/index.ts';
import type { Attempt, Command, Work } from '../../../src/lib/recipe/types.ts';

export const WORDS: DrillWords = {
  title: () => 'A drill',
  summary: () => '',
  step: (_, id) => ({ title: id, text: [], hints: [] }),
};

/** Every draw of every kind, with a name for it. */
export const DRAWS: readonly (readonly [name: string, of: Pick<Drill, 'exercise' | 'draw'>])[] = [
  ...EXERCISES.map((exercise) => [exercise, { exercise }] as const),
  ...SECOND_DRAW.map((exercise) => [`${exercise}, second draw`, { exercise, draw: 2 }] as const),
];

export const lessonOf = (variant: Variant): Lesson => drillLesson(variant, WORDS);

export const attemptOf = (lesson: Lesson, commands: readonly Command[]): Attempt => ({
  format: 'pin-and-pivot/recipe',
  version: 1,
  lesson: { id: lesson.id, content: lesson.content },
  block: blockOf(lesson),
  fabric: lesson.fabrics[0]!,
  seed: 0,
  commands,
});

/** The verdict of each step, with whatever is wrong or missing. */
export const verdicts = (lesson: Lesson, commands: readonly Command[]) =>
  gradeLesson(lesson, attemptOf(lesson, commands)).map((m) => ({
    step: m.step,
    verdict: m.verdict,
    off: m.findings
      .filter((f) => f.state === 'wrong' || f.state === 'missing')
      .map((f) => `${f.code} ${f.measured}`),
  }));

export const allAccepted = (lesson: Lesson) =>
  lesson.steps.map(({ id }) => ({ step: id, verdict: 'accepted', off: [] }));

interface Drawn {
  readonly id: string;
  readonly points: readonly Point[];
}

/** Every point of a piece's outline as it would be cut and sewn, edge by edge, from the edge called `first` on. */
function outlineFrom(piece: Piece, first: string): readonly Drawn[] {
  const drawn = outlineOf(piece).map(({ id, chain }): Drawn => {
    const points = chain.flatMap((s) => (s.kind === 'cubic' ? [s.a, s.b, s.c, s.d] : [s.a, s.d]));
    return { id, points };
  });
  const at = drawn.findIndex(({ id }) => id === first);
  return [...drawn.slice(at), ...drawn.slice(0, at)];
}

/** The pieces of the front; where there is a set for each cloth, those of both, under the name of their cloth. */
function frontsOf(work: Work): readonly Piece[] {
  if (!work.pieces.some(({ id }) => id.includes('@'))) return ownFront(work);
  return (['knit', 'woven'] as const).flatMap((cloth) =>
    piecesFor(work, cloth)
      .filter((piece) => !isBack(piece))
      .map((piece) => ({ ...piece, id: `${baseId(piece.id)}@${cloth}` })),
  );
}

/** The pieces of two tables in pairs, each walked from one edge that both have, the longest from end to end. undefined when they are not alike. */
function pairs(a: Work, b: Work): readonly (readonly [readonly Drawn[], readonly Drawn[]])[] | undefined {
  const [ours, theirs] = [frontsOf(a), frontsOf(b)];
  if (ours.length !== theirs.length) return undefined;
  const found = ours.flatMap((piece) => {
    const other = theirs.find(({ id }) => id === piece.id);
    if (!other) return [];
    const known = new Set(outlineOf(other).map(({ id }) => id));
    const all = outlineOf(piece).filter(({ id }) => known.has(id));
    const span = ({ chain }: (typeof all)[number]) => distance(chain[0]!.a, chain.at(-1)!.d);
    const longest = [...all].sort((p, q) => span(q) - span(p))[0];
    return longest ? [[outlineFrom(piece, longest.id), outlineFrom(other, longest.id)] as const] : [];
  });
  return found.length === ours.length ? found : undefined;
}

/**
 * Largest distance of two outlines, mm, in the order in which they are walked; Infinity when their edges are not of the same make. Edges that a cut
 * divided are named by the order of cuts, so names are not compared.
 */
function apart(ours: readonly Drawn[], theirs: readonly Drawn[], place: (p: Point) => Point): number {
  if (ours.length !== theirs.length) return Infinity;
  let most = 0;
  for (const [i, { points }] of ours.entries()) {
    const other = theirs[i]!.points;
    if (other.length !== points.length) return Infinity;
    points.forEach((p, k) => (most = Math.max(most, distance(p, place(other[k]!)))));
  }
  return most;
}

/** How far the outlines of two tables are apart, mm, each piece where it lies. */
export function tablesApart(a: Work, b: Work): number {
  const both = pairs(a, b);
  return both ? Math.max(...both.map(([ours, theirs]) => apart(ours, theirs, (p) => p))) : Infinity;
}

/**
 * The same for two tables on which another part was turned: each piece of the second is laid on that of the first by the two ends of one long edge.
 * Own arithmetic: a turn by the direction of that edge, and a shift.
 */
export function congruent(a: Work, b: Work): number {
  const both = pairs(a, b);
  if (!both) return Infinity;
  return Math.max(
    ...both.map(([ours, theirs]) => {
      const [p, q] = [ours[0]!.points[0]!, ours[0]!.points.at(-1)!];
      const [u, v] = [theirs[0]!.points[0]!, theirs[0]!.points.at(-1)!];
      const [x1, y1, x2, y2] = [v.x - u.x, v.y - u.y, q.x - p.x, q.y - p.y];
      const n = x1 * x1 + y1 * y1;
      const [c, s] = [(x1 * x2 + y1 * y2) / n, (x1 * y2 - y1 * x2) / n];
      return apart(ours, theirs, (w) => ({
        x: p.x + c * (w.x - u.x) - s * (w.y - u.y),
        y: p.y + s * (w.x - u.x) + c * (w.y - u.y),
      }));
    }),
  );
}
