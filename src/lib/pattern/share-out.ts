import type { Chain, Point } from '../geometry/types.ts';
import type { CutStretch } from './cut.ts';
import type { Edge, InnerLine, Part } from './types.ts';
import { chainLength, subchain } from '../geometry/chain.ts';
import { intersectChains } from '../geometry/intersect.ts';
import { hullBox, pointAt } from '../geometry/segment.ts';
import { shortSort } from '../geometry/short-sort.ts';
import { allClear } from './clear.ts';
import { cornerAt, isOff } from './outline.ts';
import { openPart, withLine } from './with.ts';

/** A line that a cut divides is left whole where less than this would come off it, mm. */
const ON_CUT = 1e-6;

/** The two sheets with what is drawn on them; both keep the part's id. */
export function shareOut(
  part: Part,
  left: readonly Edge[],
  right: readonly Edge[],
  path: readonly CutStretch[],
): { readonly left: Part; readonly right: Part } {
  const onLeft: Record<string, Point> = {};
  const onRight: Record<string, Point> = {};
  for (const id in part.landmarks) {
    const p = part.landmarks[id]!;
    const l = cornerAt(left, p) >= 0;
    const r = cornerAt(right, p) >= 0;
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
      const byCorner = cornerAt(left, a) >= 0;
      const s = l.chain[Math.floor(l.chain.length / 2)]!;
      const goesLeft = byCorner !== cornerAt(right, a) >= 0 ? byCorner : !isOff(left, pointAt(s, 0.5));
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
