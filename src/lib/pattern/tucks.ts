import type { Point } from '../geometry/types.ts';
import type { Edge, Fullness, InnerLine, Piece } from './types.ts';
import { chainEnd, chainStart, placeAtLength } from '../geometry/chain.ts';
import { add, distance, lerp, scale, sub, unit } from '../geometry/point.ts';
import { foldLine } from './cap.ts';
import { edgeLength } from './edge-length.ts';
import type { Mouth } from './mouth.ts';
import { legsOf } from './outline.ts';

/** Tucks are folded this part of the way from the edge to the dart's tip (ours). */
const TUCK_DEPTH = 0.4;

/**
 * The fold lines of a record's tucks: pairs of parallel lines from the new edge towards the dart's tip. Along the edge the two lines
 * of each pair stand as far apart as its share of the fullness, and the pairs stand evenly in what is left. Named `tuck-<dart>-<n>-1`
 * and `-2` in the direction of the outline.
 */
export function tuckLines(piece: Piece, mouth: Mouth, edge: Edge, record: Fullness): readonly InnerLine[] {
  const n = record.tucks ?? 0;
  const legs = legsOf(piece, mouth.dart);
  if (n < 1 || legs === undefined) return [];
  const tip = lerp(chainEnd(legs.into.chain), chainStart(legs.outOf.chain), 0.5);
  const length = edgeLength(edge);
  const middle = placeAtLength(edge.chain, length / 2).point;
  const depth = TUCK_DEPTH * distance(middle, tip);
  const inwards = scale(unit(sub(tip, middle)), depth);
  const each = record.fullness / n;
  const gap = (length - record.fullness) / (n + 1);
  const lines: InnerLine[] = [];
  for (let k = 0; k < n; k++) {
    const from = (k + 1) * gap + k * each;
    for (const [i, at] of [from, from + each].entries()) {
      const p: Point = placeAtLength(edge.chain, at).point;
      lines.push(foldLine(`tuck-${record.dart}-${k + 1}-${i + 1}`, record.dart, p, add(p, inwards)));
    }
  }
  return lines;
}
