import type { Options } from '../machines/scene.ts';
import { pieceSet } from '../machines/scene.ts';
import { walkedAlong, walkedSeam } from '../machines/tools/walk.ts';
import { cutSeamOf } from '../pattern/cut-seam.ts';
import { seamOf } from '../pattern/seam.ts';
import { walkSeam } from '../pattern/walk.ts';
import type { Fabric, Work } from '../recipe/types.ts';
import { formatLength, type Units } from '../strings/units.ts';

/** One interval of two seams laid beside each other; x and widths as fractions of the longer side. */
export interface WalkRow {
  readonly key: string;
  readonly a: { readonly from: number; readonly to: number };
  readonly b: { readonly from: number; readonly to: number };
  readonly text: string;
  readonly tone: 'right' | 'note' | 'wrong';
}

export interface WalkModel {
  readonly seam: string;
  readonly rows: readonly WalkRow[];
  readonly a: string;
  readonly b: string;
}

/** More than this is a difference that is shown as one, mm; what counts as right is the grader's to say. */
const SHOWN = 0.05;

/** The chosen seam straightened, its two sides beside each other from mark to mark. */
export function walkModel(work: Work, fabric: Fabric, options: Options, units: Units): WalkModel | undefined {
  const seam = walkedSeam({ work, fabric, options, reach: 0 });
  const set = pieceSet(work, fabric);
  const runs = seamOf(set, seam, fabric);
  if (!runs) return undefined;
  if (walkedAlong({ work, fabric, options, reach: 0 }) === 'cut') {
    const cut = cutSeamOf(set, seam, fabric);
    if (!cut) return undefined;
    const [a, b] = [cut.a.length, cut.b.length];
    return {
      seam,
      a: formatLength(a, units),
      b: formatLength(b, units),
      rows: [row('the cut lines', 0, a, 0, b, Math.max(a, b, 1), formatLength(a - b, units, true), a - b, 0)],
    };
  }
  const whole = Math.max(runs.a.length, runs.b.length);
  let [x, y] = [0, 0];
  const rows = walkSeam(runs.a, runs.b).map((step) => {
    const [fromA, fromB] = [x, y];
    x += step.a;
    y += step.b;
    return row(
      `${step.from} to ${step.to}`,
      fromA,
      x,
      fromB,
      y,
      whole,
      formatLength(step.difference, units, true),
      step.difference,
      step.eased,
    );
  });
  return { seam, rows, a: formatLength(runs.a.length, units), b: formatLength(runs.b.length, units) };
}

function row(
  key: string,
  a0: number,
  a1: number,
  b0: number,
  b1: number,
  whole: number,
  text: string,
  difference: number,
  eased: number,
): WalkRow {
  const left = Math.abs(difference - eased);
  const tone = Math.abs(difference) <= SHOWN ? 'right' : left <= SHOWN ? 'note' : 'wrong';
  return {
    key,
    a: { from: a0 / whole, to: a1 / whole },
    b: { from: b0 / whole, to: b1 / whole },
    text,
    tone,
  };
}
