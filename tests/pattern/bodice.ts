import fc from 'fast-check';
import { chainLength, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { splineThrough } from '../../src/lib/geometry/spline.ts';
import type { Chain } from '../../src/lib/geometry/types.ts';
import { addConnector, connectorId } from '../../src/lib/pattern/connector.ts';
import { draftBlock } from '../../src/lib/pattern/draft.ts';
import { extendDart } from '../../src/lib/pattern/extend.ts';
import { unfitMeasure } from '../../src/lib/pattern/figures.ts';
import { openOut } from '../../src/lib/pattern/mirror.ts';
import { findEdge, landmark } from '../../src/lib/pattern/outline.ts';
import type { OverlaidLine } from '../../src/lib/pattern/overlay.ts';
import { separate } from '../../src/lib/pattern/separate.ts';
import { slash } from '../../src/lib/pattern/slash.ts';
import { addLine, findLine } from '../../src/lib/pattern/style-line.ts';
import { turnPart } from '../../src/lib/pattern/turn.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import type { Measures } from '../../src/lib/pattern/block.ts';
import { ok } from './ok.ts';
import { real } from '../support/real.ts';

/** A body and a style line; lengths in mm, shares of edges in 0..1. */
export interface Design {
  readonly measures: Measures;
  readonly start: number;
  readonly end: number;
  readonly d1: number;
  readonly d2: number;
  readonly sway: number;
}

export const PLAIN: Design = {
  measures: { bust: 880, waist: 700, napeToWaist: 380 },
  start: 0.5,
  end: 0.45,
  d1: 15,
  d2: 18,
  sway: 20,
};

export const anyMeasures: fc.Arbitrary<Measures> = fc
  .record({
    bust: fc.integer({ min: 740, max: 1200 }),
    waist: fc.integer({ min: 520, max: 1150 }),
    napeToWaist: fc.integer({ min: 350, max: 440 }),
  })
  .filter((m) => unfitMeasure(m) === undefined);

export const anyDesign: fc.Arbitrary<Design> = fc.record({
  measures: anyMeasures,
  start: real(0.3, 0.7),
  end: real(0.35, 0.65),
  d1: real(10, 25),
  d2: real(10, 25),
  sway: real(5, 35),
});

/** The complete front with a line from the right shoulder past both bust points to the left side, as drawn. */
export function styled(d: Design): { readonly opened: Piece; readonly front: Piece; readonly chain: Chain } {
  const opened = ok(openOut(draftBlock(d.measures).front, 'centre-front'));
  const b1 = landmark(opened, 'right/bust-point')!;
  const b2 = landmark(opened, 'left/bust-point')!;
  const on = (id: string, part: number) => {
    const { chain } = findEdge(opened, id)!;
    return pointAtLength(chain, chainLength(chain) * part);
  };
  const chain = splineThrough([
    on('right/shoulder', d.start),
    { x: b1.x + 0.9 * d.d1, y: b1.y - 0.45 * d.d1 },
    { x: 0, y: b1.y + d.sway },
    { x: b2.x - 0.2 * d.d2, y: b2.y + 0.98 * d.d2 },
    on('left/side-lower', d.end),
  ]);
  return { opened, front: ok(addLine(opened, 'line', chain)), chain };
}

export interface Ready {
  readonly opened: Piece;
  readonly front: Piece;
  readonly lines: readonly OverlaidLine[];
  /** Connector lengths by dart, mm. */
  readonly d: Readonly<Record<'right' | 'left', number>>;
}

/** The same with working darts and connectors; undefined where this line cannot be cut. */
export function ready(design: Design): Ready | undefined {
  const { opened, front: drawn, chain } = styled(design);
  if (findLine(drawn, 'line')!.line.faults!.length > 0) return undefined;
  let front = drawn;
  const feet: Record<string, OverlaidLine['feet'][string]> = {};
  const d = { right: 0, left: 0 };
  for (const dart of ['right', 'left'] as const) {
    const tip = landmark(front, `${dart}/bust-point`)!;
    const near = nearestOnChain(chain, tip);
    const extended = extendDart(front, dart, tip);
    if ('refused' in extended) return undefined;
    const connected = addConnector(extended.ok, dart, 'line', near.length);
    if ('refused' in connected) return undefined;
    front = connected.ok;
    const [c] = findLine(front, connectorId(dart))!.line.chain;
    feet[dart] = { tip: c!.a, foot: c!.d };
    d[dart] = near.distance;
  }
  return { opened, front, lines: [{ id: 'line', chain, feet }], d };
}

/** Slash and close one dart of a piece about its bust point. */
export function close(
  piece: Piece,
  dart: 'right' | 'left',
  from: 'start' | 'end' | undefined,
  part = 'freed',
): Piece {
  const cut = ok(slash(piece, { dart, line: 'line', from, past: 0 }));
  const pivot = landmark(cut, `${dart}/bust-point`)!;
  return ok(turnPart(cut, { dart, part, pivot, by: { until: 'legs-meet' } })).piece;
}

/** Both darts closed, then the pieces parted; `upper` first. */
export function closedThenParted(front: Piece): readonly [Piece, Piece] {
  return ok(separate(close(close(front, 'right', 'start'), 'left', 'end'), 'line'));
}

/** The pieces parted first, then each dart closed; `upper` first. */
export function partedThenClosed(front: Piece): readonly [Piece, Piece] {
  const [upper, lower] = ok(separate(front, 'line'));
  return [close(upper, 'left', undefined), close(lower, 'right', undefined)];
}
