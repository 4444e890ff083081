import type { Chain, Isometry, Point, Segment } from '../geometry/types.ts';
import type { Edge, Piece } from './types.ts';
import { IDENTITY, compose, rotationTaking } from '../geometry/isometry.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { reverseChain, transformChain } from '../geometry/chain-moved.ts';
import { edgeLength } from './edge-length.ts';
import { type Mouth, finishedDart, standsIn } from './mouth.ts';
import { startAt } from './outline.ts';

/**
 * The outline as it runs away from a mouth, from its start backwards or from its end on, at least `reach` mm of it where there is as much;
 * other darts on the way are folded away, as they are before this one is. Empty when nothing can be followed.
 */
export function runBeside(piece: Piece, mouth: Mouth, way: 'back' | 'on', reach: number): Chain {
  const { outline, count } = mouth;
  const n = outline.length;
  const step = way === 'on' ? 1 : -1;
  const out: Segment[] = [];
  let motion: Isometry = IDENTITY;
  let run = 0;
  for (let i = way === 'on' ? count : n - 1; i >= count && i < n && run < reach; i += step) {
    const e = outline[i]!;
    if (e.role === 'connector') break;
    if (standsIn(e)) {
      let last = i;
      while (last + step >= count && last + step < n && standsIn(outline[last + step]!, e.dart)) last += step;
      const [first, end] = way === 'on' ? [i, last] : [last, i];
      const folded = foldAway(piece, outline.slice(first, end + 1), way);
      if (folded === undefined) break;
      motion = compose(motion, folded);
      i = last;
      continue;
    }
    const chain = way === 'on' ? e.chain : reverseChain(e.chain);
    const lies = motion === IDENTITY ? chain : transformChain(chain, motion);
    const before = out[out.length - 1];
    out.push(...(before === undefined ? lies : startAt(lies, before.d)));
    run += edgeLength(e);
  }
  return out;
}

/** The turn that lays what lies beyond a dart on its near leg. */
function foldAway(piece: Piece, inMouth: readonly Edge[], way: 'back' | 'on'): Isometry | undefined {
  const [into] = inMouth;
  const point: Point | undefined =
    finishedDart(piece, into!.dart!)?.sewnPoint ??
    (into!.role === 'dart-leg' ? chainEnd(into!.chain) : undefined);
  if (point === undefined) return undefined;
  const start = chainStart(into!.chain);
  const end = chainEnd(inMouth[inMouth.length - 1]!.chain);
  return way === 'on' ? rotationTaking(point, end, start) : rotationTaking(point, start, end);
}
