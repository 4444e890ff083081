import type { Chain, Point } from '../geometry/types.ts';
import type { CutStretch } from './cut.ts';
import type { Edge, InnerLine, Part } from './types.ts';
import { chainLength } from '../geometry/chain.ts';
import { subchain } from '../geometry/subchain.ts';
import { intersectChains } from '../geometry/intersect.ts';
import { hullBox, pointAt } from '../geometry/segment.ts';
import { shortSort } from '../geometry/short-sort.ts';
import { allClear } from './clear.ts';
import { isOff } from './outline.ts';
import { openPart } from './with.ts';
import { withLine } from './with-marks.ts';

/** A line that a cut divides is left whole where less than this would come off it, mm. */
const ON_CUT = 1e-6;

// The corners of the two sheets as x, y, x, y ...: they are gone through for every landmark. State only within one call.
let leftCorners = new Float64Array(64);
let rightCorners = new Float64Array(64);

/** Writes the corners of an outline down, in the room that is there if it is enough. */
function cornersOf(edges: readonly Edge[], room: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> {
  const out = room.length < 2 * edges.length ? new Float64Array(4 * edges.length) : room;
  for (let i = 0; i < edges.length; i++) {
    const { a } = edges[i]!.chain[0]!;
    out[2 * i] = a.x;
    out[2 * i + 1] = a.y;
  }
  return out;
}

function isAmong(corners: Float64Array, count: number, p: Point): boolean {
  const { x, y } = p;
  for (let i = 0; i < 2 * count; i += 2) if (corners[i] === x && corners[i + 1] === y) return true;
  return false;
}

/** The two sheets with what is drawn on them; both keep the part's id. */
export function shareOut(
  part: Part,
  left: readonly Edge[],
  right: readonly Edge[],
  path: readonly CutStretch[],
): { readonly left: Part; readonly right: Part } {
  leftCorners = cornersOf(left, leftCorners);
  rightCorners = cornersOf(right, rightCorners);
  const onLeft: Record<string, Point> = {};
  const onRight: Record<string, Point> = {};
  for (const id in part.landmarks) {
    const p = part.landmarks[id]!;
    const l = isAmong(leftCorners, left.length, p);
    const r = isAmong(rightCorners, right.length, p);
    if (l) onLeft[id] = p;
    if (r) onRight[id] = p;
    // The sewn point of a working dart lies in the dart's mouth, off the paper.
    if (l || r || id.endsWith('/sewn-point')) continue;
    if (!isOff(left, p)) onLeft[id] = p;
    else if (!isOff(right, p)) onRight[id] = p;
  }
  const linesLeft: InnerLine[] = [];
  const linesRight: InnerLine[] = [];
  for (const line of part.lines) {
    for (const l of line.kind === 'centre-front' ? dividedBy(line, path) : [line]) {
      // A connector or a taped leg begins at a corner, which mostly tells already.
      const { a } = l.chain[0]!;
      const byCorner = isAmong(leftCorners, left.length, a);
      const s = l.chain[Math.floor(l.chain.length / 2)]!;
      const goesLeft =
        byCorner !== isAmong(rightCorners, right.length, a) ? byCorner : !isOff(left, pointAt(s, 0.5));
      (goesLeft ? linesLeft : linesRight).push(l);
    }
  }
  return { left: sheetOf(part, left, linesLeft, onLeft), right: sheetOf(part, right, linesRight, onRight) };
}

function sheetOf(
  part: Part,
  edges: readonly Edge[],
  lines: readonly InnerLine[],
  landmarks: Part['landmarks'],
): Part {
  const sheet = openPart(part);
  sheet.edges = edges;
  sheet.lines = lines;
  sheet.landmarks = landmarks;
  return sheet;
}

/** What the cut leaves of a line that it crosses. */
function dividedBy(l: InnerLine, path: readonly CutStretch[]): readonly InnerLine[] {
  if (!comesNear(l.chain, path)) return [l];
  const length = chainLength(l.chain);
  const cuts: number[] = [];
  for (const { chain } of path) {
    for (const { a } of intersectChains(l.chain, chain))
      if (a.length > ON_CUT && a.length < length - ON_CUT) cuts.push(a.length);
  }
  if (cuts.length === 0) return [l];
  shortSort(cuts, (a, b) => a - b).push(length);
  const { edge, from: first } = l.origin;
  const out: InnerLine[] = [];
  let from = 0;
  for (const to of cuts) {
    if (to - from > ON_CUT) {
      const origin = { edge, from: first + from, to: first + to };
      out.push(withLine(l, { chain: subchain(l.chain, from, to), origin }));
    }
    from = to;
  }
  return out;
}

function comesNear(chain: Chain, path: readonly CutStretch[]): boolean {
  for (const s of chain) {
    const box = hullBox(s);
    for (const p of path) if (!allClear(p.chain, box, ON_CUT)) return true;
  }
  return false;
}
