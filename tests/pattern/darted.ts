import { chainLength } from '../../src/lib/geometry/chain.ts';
import { IDENTITY } from '../../src/lib/geometry/isometry.ts';
import { cubic, line } from '../../src/lib/geometry/segment.ts';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import type { Dart, Edge, EdgeRole, Part, Piece } from '../../src/lib/pattern/types.ts';

/**
 * A piece with one working dart in its waist, built point by point: the tip at (0, 0), the legs `leg` mm long and `angle` radians
 * apart, the middle straight down. The waist meets each leg at `meets` radians (measured on the paper; square by default) and
 * is bent by `bend` mm.
 */
export interface Darted {
  readonly leg: number;
  readonly angle: number;
  readonly meets?: number;
  readonly bend?: number;
  /** Alternate pivots of the two legs, mm. */
  readonly via?: readonly [Point, Point];
}

export const point = (x: number, y: number): Point => ({ x, y });

export function darted({ leg, angle, meets = Math.PI / 2, bend = 0, via }: Darted): Piece {
  const half = angle / 2;
  const tip = point(0, 0);
  const start = point(leg * Math.sin(half), leg * Math.cos(half));
  const end = point(-start.x, start.y);
  // From the leg's end the waist runs at `meets` from the direction to the tip, away from the dart.
  const run = 220;
  const way = point(Math.sin(half + Math.PI - meets), Math.cos(half + Math.PI - meets));
  const right = point(start.x + run * way.x, start.y + run * way.y);
  const left = point(-right.x, right.y);
  const waist = (a: Point, d: Point): Chain => {
    if (bend === 0) return [line(a, d)];
    const on = (k: number): Point => point(a.x + k * (d.x - a.x), a.y + k * (d.y - a.y) + bend);
    return [cubic(a, on(1 / 3), on(2 / 3), d)];
  };
  const top = Math.min(right.y, -60) - 120;
  const legs: readonly [Chain, Chain] = via
    ? [
        [line(start, via[0]), line(via[0], tip)],
        [line(tip, via[1]), line(via[1], end)],
      ]
    : [[line(start, tip)], [line(tip, end)]];
  const edges = [
    edge('right/waist.1', 'waist', waist(right, start)),
    edge('slash/b', 'dart-leg', legs[0], 'slash/a'),
    edge('slash/a', 'dart-leg', legs[1], 'slash/b'),
    edge('right/waist.2', 'waist', waist(end, left)),
    edge('right/side', 'side', [line(left, point(left.x, top))]),
    edge('right/shoulder', 'shoulder', [line(point(left.x, top), point(right.x, top))]),
    edge('centre-front', 'centre-front', [line(point(right.x, top), right)]),
  ];
  const landmarks = {
    'right/bust-point': tip,
    'neck-centre': point(right.x, top),
    'waist-centre': right,
  };
  const dart: Dart = {
    id: 'slash',
    side: 'right',
    state: 'working',
    upper: 'slash/a',
    lower: 'slash/b',
    bustPoint: 'right/bust-point',
    residual: angle,
  };
  const part: Part = { id: 'front', edges, lines: [], landmarks, grain: 'kept', motion: IDENTITY };
  return {
    id: 'front',
    parts: [part],
    hinges: [],
    darts: [dart],
    notches: [],
    treatments: [],
    allowances: {},
    corners: [],
    notchesCarried: false,
  };
}

function edge(id: string, role: EdgeRole, chain: Chain, partner?: string): Edge {
  const origin = { edge: id, from: 0, to: chainLength(chain) };
  return { id, role, side: 'right', chain, origin, partner, dart: partner && 'slash' };
}
