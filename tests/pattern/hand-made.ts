import {
  chainEnd,
  chainLength,
  chainStart,
  pointAtLength,
  tangentAtLength,
} from '../../src/lib/geometry/chain.ts';
import { reverseChain, transformChain } from '../../src/lib/geometry/chain-moved.ts';
import { subchain } from '../../src/lib/geometry/subchain.ts';
import { applyTo, IDENTITY, rotationByAngle } from '../../src/lib/geometry/isometry.ts';
import { add, perpendicular, scale } from '../../src/lib/geometry/point.ts';
import { cubic, line } from '../../src/lib/geometry/segment.ts';
import { splineThrough } from '../../src/lib/geometry/spline.ts';
import type { Chain, Isometry, Point } from '../../src/lib/geometry/types.ts';
import type { Edge, EdgeNotch, EdgeRole, Part, Piece, Side } from '../../src/lib/pattern/types.ts';

/**
 * The two pieces of a front as they stand when both darts were moved into a slanted line, built point by point and not by
 * the project's own cutting and turning: one sheet each. Lower: bank b, opening of dart `right` at foot 1; upper: bank a,
 * opening of dart `left` at foot 2. Line from the right shoulder to the left side.
 */
export interface HandMade {
  readonly upper: Piece;
  readonly lower: Piece;
  readonly line: Chain;
  readonly feet: readonly [number, number];
}

export interface Numbers {
  /** Dart angle, radians. */
  readonly angle: number;
  /** Distances of the line from the two bust points, mm. */
  readonly d1: number;
  readonly d2: number;
  /** How much the line bends: mm of sway in its middle. */
  readonly sway: number;
}

export const PLAIN: Numbers = { angle: 0.32, d1: 18, d2: 16, sway: 12 };

const p = (x: number, y: number): Point => ({ x, y });
const straight = (a: Point, b: Point): Chain => [line(a, b)];

const piece = (id: string, edges: readonly Edge[], notches: readonly EdgeNotch[]): Piece => {
  const part: Part = { id, edges: closed(edges), lines: [], landmarks: {}, grain: 'kept', motion: IDENTITY };
  return {
    id,
    parts: [part],
    hinges: [],
    darts: [],
    notches,
    treatments: [],
    allowances: {},
    corners: [],
    notchesCarried: false,
  };
};

/** Each edge made to start at the very point where the one before it ends. */
const closed = (edges: readonly Edge[]): Edge[] =>
  edges.map((e, i) => {
    const from = chainEnd(edges[(i + edges.length - 1) % edges.length]!.chain);
    const [head, ...rest] = e.chain;
    return { ...e, chain: [{ ...head!, a: from }, ...rest] };
  });

const edge = (id: string, role: EdgeRole, side: Side, chain: Chain, more: Partial<Edge> = {}): Edge => ({
  id,
  role,
  side,
  chain,
  origin: { edge: id, from: 0, to: chainLength(chain) },
  ...more,
});

export function handMade({ angle, d1, d2, sway }: Numbers = PLAIN): HandMade {
  const start = p(-120, -225);
  const end = p(240, 110);
  const whole = splineThrough([start, p(-70, -90 + sway), p(0, 0), p(90, 60 + sway), end]);
  const f1 = 200;
  const length = chainLength(whole);
  const f2 = length - 170;
  const stretch = (from: number, to: number) => subchain(whole, from, to);
  const side = (mm: number, d: number) =>
    add(pointAtLength(whole, mm), scale(perpendicular(tangentAtLength(whole, mm)), d));
  // The clockwise hand of the line is the lower piece's.
  const b1 = side(f1, d1);
  const b2 = side(f2, -d2);
  const open1 = rotationByAngle(b1, -angle);
  const open2 = rotationByAngle(b2, -angle);
  const shut1 = rotationByAngle(b1, angle);
  const shut2 = rotationByAngle(b2, angle);
  const at = (m: Isometry, c: Chain) => transformChain(c, m);
  const back = reverseChain;

  const sideDart1 = p(-245, 55);
  const dart1Up = applyTo(shut1, sideDart1);
  const underarm1 = p(-235, -50);
  const shoulder1 = p(-184, -205);
  const armhole = (from: Point, to: Point, inward: number): Chain => [
    cubic(from, add(from, p(inward, 0)), add(to, p(inward * 0.2, 90)), to),
  ];
  const foot1 = pointAtLength(whole, f1);
  const foot2 = pointAtLength(whole, f2);
  const interval = (n: number, bank: 'a' | 'b', from: number, to: number, chain: Chain): Edge =>
    edge(`line/${n}/${bank}`, 'style-line', 'centre', chain, {
      origin: { edge: 'line', from, to },
      partner: `line/${n}/${bank === 'a' ? 'b' : 'a'}`,
    });
  const connector = (dart: string, bank: string, chain: Chain) =>
    edge(`connector-${dart}/${bank}`, 'connector', 'centre', chain, { dart });

  const waist1 = p(-245, 175);
  const waist2 = p(240, 175);
  const lower = [
    edge('right/side-lower', 'side', 'right', straight(waist1, sideDart1)),
    edge('right/side-upper', 'side', 'right', at(open1, straight(dart1Up, underarm1))),
    edge('right/armhole', 'armhole', 'right', at(open1, armhole(underarm1, shoulder1, 60))),
    edge('right/shoulder.1', 'shoulder', 'right', at(open1, straight(shoulder1, start)), {
      origin: { edge: 'right/shoulder', from: 0, to: chainLength(straight(shoulder1, start)) },
    }),
    interval(1, 'b', 0, f1, at(open1, stretch(0, f1))),
    connector('right', 'a', at(open1, straight(foot1, b1))),
    connector('right', 'b', straight(b1, foot1)),
    interval(2, 'b', f1, f2, stretch(f1, f2)),
    interval(3, 'b', f2, length, stretch(f2, length)),
    edge('left/side-lower.2', 'side', 'left', straight(end, waist2)),
    edge('left/waist', 'waist', 'left', straight(waist2, p(0, 175))),
    edge('right/waist', 'waist', 'right', straight(p(0, 175), waist1)),
  ];
  const neck1 = p(-69, -245);
  const neck2 = p(69, -245);
  const shoulder2 = p(184, -205);
  const underarm2 = p(235, -50);
  const sideDart2 = p(243, 5);
  const dart2Low = applyTo(shut2, sideDart2);
  const upper = [
    edge('right/neckline', 'neckline', 'right', [cubic(neck1, p(-55, -190), p(-40, -175), p(0, -175))]),
    edge('left/neckline', 'neckline', 'left', [cubic(p(0, -175), p(40, -175), p(55, -190), neck2)]),
    edge('left/shoulder', 'shoulder', 'left', straight(neck2, shoulder2)),
    edge('left/armhole', 'armhole', 'left', back(armhole(underarm2, shoulder2, -60))),
    edge('left/side-upper', 'side', 'left', straight(underarm2, sideDart2)),
    edge('left/side-lower.1', 'side', 'left', at(open2, straight(dart2Low, end))),
    interval(3, 'a', f2, length, at(open2, back(stretch(f2, length)))),
    connector('left', 'a', at(open2, straight(foot2, b2))),
    connector('left', 'b', straight(b2, foot2)),
    interval(2, 'a', f1, f2, back(stretch(f1, f2))),
    interval(1, 'a', 0, f1, back(stretch(0, f1))),
    edge('right/shoulder.2', 'shoulder', 'right', straight(start, neck1), {
      origin: { edge: 'right/shoulder', from: 64, to: 64 + chainLength(straight(start, neck1)) },
    }),
  ];

  const marks: readonly (readonly [string, number])[] = [
    ['n1', f1 - 45],
    ['n2', f1 + 40],
    ['n3', f2 - 50],
    ['n4', f2 + 42],
  ];
  const onBank = (bank: 'a' | 'b'): EdgeNotch[] =>
    marks.map(([id, mm]) => {
      const n = mm < f1 ? 1 : mm < f2 ? 2 : 3;
      const [from, to] = n === 1 ? [0, f1] : n === 2 ? [f1, f2] : [f2, length];
      return { id, line: 'line', edge: `line/${n}/${bank}`, at: bank === 'b' ? mm - from : to - mm };
    });
  return {
    upper: piece('upper', upper, onBank('a')),
    lower: piece('lower', lower, onBank('b')),
    line: whole,
    feet: [f1, f2],
  };
}

/** A half back (the wearer's right, centre back on the viewer's left) whose shoulder is `ease` mm longer than the front's was. */
export function handMadeBack(front: HandMade, ease = 5): Piece {
  const width = (side: 'shoulder' | 'side') => {
    const of = side === 'shoulder' ? 'right' : 'left';
    let sum = 0;
    for (const x of [front.upper, front.lower]) {
      for (const e of x.parts[0]!.edges) if (e.role === side && e.side === of) sum += chainLength(e.chain);
    }
    return sum;
  };
  const nape = p(-560, -205);
  const neck = p(-490, -230);
  const tip = add(neck, scale(p(0.96, 0.28), width('shoulder') + ease));
  const underarm = p(-327, 0);
  const sideWaist = add(underarm, p(0, width('side')));
  const waist = p(-560, sideWaist.y);
  return piece(
    'back',
    [
      edge('back/centre-back', 'centre-back', 'centre', straight(waist, nape)),
      edge('back/neckline', 'neckline', 'centre', [cubic(nape, p(-530, -205), p(-505, -212), neck)]),
      edge('back/shoulder', 'shoulder', 'centre', straight(neck, tip)),
      edge('back/armhole', 'armhole', 'centre', [cubic(tip, add(tip, p(-20, 70)), p(-375, 0), underarm)]),
      edge('back/side', 'side', 'centre', straight(underarm, sideWaist)),
      edge('back/waist', 'waist', 'centre', straight(sideWaist, waist)),
    ],
    [],
  );
}

/** Largest gap between an edge and the next in a closed list, mm: 0 when every joint is bit for bit the same point. */
export const openJoints = (edges: readonly Edge[]): number =>
  edges.filter((e, i) => {
    const next = chainStart(edges[(i + 1) % edges.length]!.chain);
    const end = chainEnd(e.chain);
    return end.x !== next.x || end.y !== next.y;
  }).length;
