import { describe, expect, it } from 'vitest';
import { IDENTITY } from '../../src/lib/geometry/isometry.ts';
import { line } from '../../src/lib/geometry/segment.ts';
import { degrees, radians } from '../../src/lib/geometry/trig.ts';
import type { Point } from '../../src/lib/geometry/types.ts';
import { angleSum } from '../../src/lib/pattern/angles.ts';
import { cutPart } from '../../src/lib/pattern/cut.ts';
import { extendDart } from '../../src/lib/pattern/extend.ts';
import { dartAngle, drawnAngle, intake, legLength, slip } from '../../src/lib/pattern/measure.ts';
import { turnPart } from '../../src/lib/pattern/turn.ts';
import type { Edge, Part, Piece } from '../../src/lib/pattern/types.ts';
import { ok } from './ok.ts';

/** A round sheet of radius L about the bust point with a dart of angle θ; `off` mm backed off. Built with Math's own sine. */
function disc(L: number, theta: number, off = 0): Piece {
  const at = (deg: number): Point => ({
    x: L * Math.cos((deg * Math.PI) / 180),
    y: L * Math.sin((deg * Math.PI) / 180),
  });
  const bust = { x: 0, y: 0 };
  const tip = off === 0 ? bust : { x: -off, y: 0 };
  // Clockwise on the screen from the upper leg's end round to the lower leg's end, legs to the left.
  const rim: Point[] = [];
  const [first, last] = [180 + theta / 2, 540 - theta / 2];
  for (let k = 0; k <= 24; k++) rim.push(at(first + ((last - first) * k) / 24));
  const make = (id: string, role: Edge['role'], a: Point, d: Point): Edge => ({
    id,
    role,
    side: 'right',
    chain: [line(a, d)],
    origin: { edge: id, from: 0, to: 1 },
    ...(role === 'dart-leg' && { dart: 'right' }),
  });
  const edges = rim.slice(1).map((p, i) => make(`rim/${i}`, 'side', rim[i]!, p));
  edges.push(make('right/dart-lower', 'dart-leg', rim.at(-1)!, tip));
  edges.push(make('right/dart-upper', 'dart-leg', tip, rim[0]!));
  const part: Part = {
    id: 'front',
    edges,
    lines: [],
    landmarks: { 'right/bust-point': bust, 'waist-centre': rim[12]! },
    grain: 'kept',
    motion: IDENTITY,
  };
  return {
    id: 'front',
    parts: [part],
    hinges: [],
    darts: [
      {
        id: 'right',
        side: 'right',
        state: off === 0 ? 'working' : 'sewn',
        upper: 'right/dart-upper',
        lower: 'right/dart-lower',
        bustPoint: 'right/bust-point',
        residual: radians(theta),
      },
    ],
    notches: [],
    treatments: [],
    allowances: {},
    corners: [],
    notchesCarried: false,
  };
}

describe('dart theory, from trade notes (derived: arithmetic from c = 2 L sin(θ/2))', () => {
  it('intake of 25° on a leg of 150 mm is 64.93 mm', () => {
    expect(intake(disc(150, 25), 'right')).toBeCloseTo(64.93, 2);
  });

  it('an intake of 70 mm over 250 mm is 16.10°, of 20 mm over 130 mm 8.82°', () => {
    for (const [c, L, theta] of [
      [70, 250, 16.1],
      [20, 130, 8.82],
    ] as const) {
      const piece = disc(L, (2 * Math.asin(c / 2 / L) * 180) / Math.PI);
      expect(intake(piece, 'right')).toBeCloseTo(c, 9);
      expect(Math.abs(degrees(dartAngle(piece, 'right')!) - theta)).toBeLessThan(0.005);
      expect(legLength(piece, 'right')).toBeCloseTo(L, 9);
    }
  });

  it('one degree on a leg of 236 mm is already 4.1 mm at its end', () => {
    expect(intake(disc(236, 1), 'right')).toBeCloseTo(4.1, 1);
  });

  it('a sewn dart draws a larger angle with the same intake: L 180, 28°, 12.7 off', () => {
    const piece = disc(180, 28, 12.7);
    expect(degrees(drawnAngle(piece, 'right')!)).toBeCloseTo(30.1, 2);
    expect(intake(piece, 'right')).toBeCloseTo(87.09, 2);
    expect(degrees(dartAngle(piece, 'right')!)).toBeCloseTo(28, 9);
  });

  it('L 130, 28°, 25.4 off draws 34.68°', () => {
    expect(degrees(drawnAngle(disc(130, 28, 25.4), 'right')!)).toBeCloseTo(34.68, 2);
  });

  it('extending a sewn dart to the bust point gives the true angle and the same intake', () => {
    const sewn = disc(180, 28, 12.7);
    const working = ok(extendDart(sewn, 'right', { x: 0, y: 0 }));
    expect(degrees(drawnAngle(working, 'right')!)).toBeCloseTo(28, 9);
    expect(intake(working, 'right')).toBeCloseTo(intake(sewn, 'right')!, 12);
    expect(working.darts[0]!.state).toBe('working');
  });

  // 25° at 150 mm = 64.93; split 10° + 15° = 26.15 + 39.16.
  it('split darts: the angles add up, the widths do not', () => {
    const whole = disc(150, 25);
    const part = whole.parts[0]!;
    const rim = part.edges[6]!.chain[0]!.a;
    const bank = (id: string): Omit<Edge, 'chain'> => ({
      id,
      role: 'connector',
      side: 'right',
      origin: { edge: 'slash', from: 0, to: 150 },
    });
    const cut = ok(
      cutPart(part, [{ chain: [line(rim, { x: 0, y: 0 })], left: bank('slash/a'), right: bank('slash/b') }]),
    );
    const kept = cut.left.landmarks['waist-centre'] ? cut.left : cut.right;
    const freed = { ...(kept === cut.left ? cut.right : cut.left), id: 'freed' };
    const slashed: Piece = {
      ...whole,
      parts: [kept, freed],
      hinges: [{ dart: 'right', parts: ['freed', 'front'], intact: true }],
    };
    const before = angleSum([slashed], 'right/bust-point');
    expect(degrees(before)).toBeCloseTo(360 - 25, 9);
    // The freed sheet lies above the upper leg: closing turns it against the clock.
    const wish = { dart: 'right', part: 'freed', pivot: { x: 0, y: 0 }, by: { angle: -radians(10) } };
    const { piece, fact } = ok(turnPart(slashed, wish));
    expect(degrees(fact.residual)).toBeCloseTo(15, 9);
    expect(intake(piece, 'right')).toBeCloseTo(39.16, 2);
    expect(degrees(piece.darts[0]!.residual)).toBeCloseTo(15, 9);
    const bankA = piece.parts.flatMap((p) => p.edges).find((e) => e.id === 'slash/a')!.chain[0]!;
    const bankB = piece.parts.flatMap((p) => p.edges).find((e) => e.id === 'slash/b')!.chain[0]!;
    const width = Math.sqrt((bankA.d.x - bankB.a.x) ** 2 + (bankA.d.y - bankB.a.y) ** 2);
    expect(width).toBeCloseTo(26.15, 2);
    expect(Math.abs(angleSum([piece], 'right/bust-point') - before)).toBeLessThan(1e-9);
    expect(slip(piece, 'right')).toBe(0);
  });

  // Watkins, "The Gaussian Curvature and the Angular Deficit" (memory of the title; arithmetic derived): the deficit at the bust point is θ.
  it('the paper round the bust point lacks the dart angle', () => {
    expect(degrees(angleSum([disc(150, 30)], 'right/bust-point'))).toBeCloseTo(330, 9);
    expect(degrees(angleSum([disc(150, 30, 20)], 'right/bust-point'))).toBeCloseTo(360, 9);
  });

  it('has no measure of a dart that is not there', () => {
    expect(dartAngle(disc(150, 30), 'left')).toBeUndefined();
    expect(intake(disc(150, 30), 'left')).toBeUndefined();
  });
});
