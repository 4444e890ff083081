import { chainLength, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { splineThrough } from '../../src/lib/geometry/spline.ts';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { addConnector } from '../../src/lib/pattern/connector.ts';
import { draftBlock } from '../../src/lib/pattern/draft.ts';
import { extendDart } from '../../src/lib/pattern/extend.ts';
import { FIGURES, type FigureCode } from '../../src/lib/pattern/figures.ts';
import { markNotch } from '../../src/lib/pattern/line-notches.ts';
import { openOut } from '../../src/lib/pattern/mirror.ts';
import { findEdge, landmark } from '../../src/lib/pattern/outline.ts';
import { separate } from '../../src/lib/pattern/separate.ts';
import { slash } from '../../src/lib/pattern/slash.ts';
import { addLine } from '../../src/lib/pattern/style-line.ts';
import { turnPart } from '../../src/lib/pattern/turn.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import type { Block } from '../../src/lib/pattern/block.ts';
import { ok } from './ok.ts';

export interface LessonPieces {
  readonly block: Block;
  readonly upper: Piece;
  readonly lower: Piece;
  readonly back: Piece;
  readonly line: Chain;
  readonly feet: readonly [number, number];
}

/** The front of a demo figure opened out, styled, notched, both darts moved and cut apart: steps 2 to 9 of the slanted seam. */
export function lessonPieces(
  figure: FigureCode = 'F3',
  near: readonly [number, number] = [15, 15],
): LessonPieces {
  const block = draftBlock(FIGURES[figure]);
  let front = ok(openOut(block.front, 'centre-front'));
  const b1 = landmark(front, 'right/bust-point')!;
  const b2 = landmark(front, 'left/bust-point')!;
  const on = (id: string, part: number): Point => {
    const { chain } = findEdge(front, id)!;
    return pointAtLength(chain, chainLength(chain) * part);
  };
  const beside = (p: Point, x: number, y: number, d: number): Point => ({ x: p.x + x * d, y: p.y + y * d });
  const line = splineThrough([
    on('right/shoulder', 0.5),
    beside(b1, 0.86, -0.5, near[0]),
    { x: 0, y: (b1.y + b2.y) / 2 + 12 },
    beside(b2, -0.2, 0.98, near[1]),
    on('left/side-lower', 0.45),
  ]);
  front = ok(addLine(front, 'line', line));
  const feet = [nearestOnChain(line, b1).length, nearestOnChain(line, b2).length] as const;
  const marks = { n1: feet[0] - 45, n2: feet[0] + 40, n3: feet[1] - 50, n4: feet[1] + 42 };
  for (const [id, at] of Object.entries(marks)) front = ok(markNotch(front, 'line', { id, at }));
  for (const [dart, at, b, from] of [
    ['right', feet[0], b1, 'start'],
    ['left', feet[1], b2, 'end'],
  ] as const) {
    front = ok(extendDart(front, dart, b));
    front = ok(addConnector(front, dart, 'line', at));
    front = ok(slash(front, { dart, line: 'line', from, past: 0 }));
    front = ok(turnPart(front, { dart, part: `freed-${dart}`, pivot: b, by: { until: 'legs-meet' } })).piece;
  }
  const [upper, lower] = ok(separate(front, 'line'));
  return { block, upper, lower, back: block.back, line, feet };
}
