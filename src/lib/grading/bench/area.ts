import { signedArea } from '../../geometry/outline.ts';
import { pieceArea } from '../../pattern/measure.ts';
import { chainOf } from '../../pattern/outline.ts';
import type { Piece } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';
import { drawnDarts, paperOf } from './drawn-darts.ts';

/** Paper of the front, mm². */
export interface PaperArea {
  /** Over all sheets. */
  readonly sheets: number;
  /** What they must be: the paper with its darts drawn as they are now. Cutting and turning takes nothing away and adds nothing. */
  readonly expected: number;
  /** Inside the seam lines as they run now, less the sheets: what bridges, trimmed ends, caps and gathered edges add or take away. */
  readonly redrawn: number;
}

const sheetsOf = (pieces: readonly Piece[]): number =>
  pieces.reduce(
    (sum, { parts }) => parts.reduce((all, { edges }) => all + signedArea(chainOf(edges)), sum),
    0,
  );

/** Area of a triangle with these sides (Heron; derived: half of base times height). */
function triangle(base: number, [a, b]: readonly [number, number]): number {
  const s = (base + a + b) / 2;
  return Math.sqrt(Math.max(0, s * (s - base) * (s - a) * (s - b)));
}

/** Area of a set of front pieces against the paper that they came from. */
export function areaOf(work: Work, fronts: readonly Piece[]): PaperArea {
  const sheets = sheetsOf(fronts);
  // A dart is no paper: drawing it to another tip changes how much there is.
  const darts = drawnDarts(work, fronts).reduce(
    (sum, { base, before, now }) => sum + triangle(base, before) - triangle(base, now),
    0,
  );
  const seams = fronts.reduce((sum, piece) => sum + pieceArea(piece), 0);
  return { sheets, expected: sheetsOf([paperOf(work)]) + darts, redrawn: seams - sheets };
}
