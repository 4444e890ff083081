import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { chainBounds, chainEnd, chainLength, chainStart } from '../../src/lib/geometry/chain.ts';
import { isSimple, signedArea } from '../../src/lib/geometry/outline.ts';
import { distance, dot, samePoint } from '../../src/lib/geometry/point.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { tangentAt } from '../../src/lib/geometry/segment.ts';
import { degrees } from '../../src/lib/geometry/trig.ts';
import type { Point } from '../../src/lib/geometry/types.ts';
import { construction } from '../../src/lib/pattern/construction.ts';
import { draftBlock } from '../../src/lib/pattern/draft.ts';
import { FIGURES, unfitMeasure } from '../../src/lib/pattern/figures.ts';
import { dartAngle, drawnAngle } from '../../src/lib/pattern/measure.ts';
import { chainOf, findEdge, landmark } from '../../src/lib/pattern/outline.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { anyMeasures } from './bodice.ts';

// Many runs of a property; a busy machine must not make them fail.
vi.setConfig({ testTimeout: 60_000 });

const length = (piece: Piece, id: string): number => chainLength(findEdge(piece, id)!.chain);
const leaves = (piece: Piece, id: string): Point => tangentAt(findEdge(piece, id)!.chain[0]!, 0);
const arrives = (piece: Piece, id: string): Point => tangentAt(findEdge(piece, id)!.chain.at(-1)!, 1);

describe('the three-measurement draft', () => {
  // Source: Bunka Fashion College, Fundamentals of Garment Design (memory), worked for B 83 cm, W 64 cm.
  it('gives the published lengths for bust 83, waist 64', () => {
    const c = construction({ bust: 830, waist: 640, napeToWaist: 380 });
    expect(c.halfWidth).toBeCloseTo(475, 9);
    expect(Math.abs(c.bustLine - 206)).toBeLessThan(0.5);
    expect(Math.abs(c.backWidth - 178)).toBeLessThan(0.5);
    expect(Math.abs(c.frontNeckUp - 249)).toBeLessThan(0.5);
    expect(Math.abs(c.chestWidth - 166)).toBeLessThan(0.5);
    expect(degrees(c.dartAngle)).toBeCloseTo(18.25, 9);
    expect(c.suppression).toBeCloseTo(125, 9);
  });

  // Source: the same (memory): dart 19.5° at bust 88.
  it('gives the published dart for bust 88, measured on the finished block', () => {
    const block = draftBlock({ bust: 880, waist: 700, napeToWaist: 380 });
    expect(degrees(block.facts.dartAngle)).toBeCloseTo(19.5, 9);
    expect(degrees(dartAngle(block.front, 'right')!)).toBeCloseTo(19.5, 9);
  });

  // Source: the same (memory): neck depth is neck width + 5 mm; bust point on the bust line at the middle of the half chest
  // width and 7 mm towards the side; front shoulder slopes 22°, back 18°.
  it('puts neck, bust point and shoulders where the draft has them', () => {
    const { front, back } = draftBlock({ bust: 830, waist: 640, napeToWaist: 380 });
    const neck = landmark(front, 'right/neck-point')!;
    const centre = landmark(front, 'neck-centre')!;
    expect(-neck.x).toBeCloseTo(830 / 24 + 34, 9);
    expect(centre.y - neck.y).toBeCloseTo(830 / 24 + 39, 9);
    const bust = landmark(front, 'right/bust-point')!;
    expect(bust.y).toBe(0);
    expect(-bust.x).toBeCloseTo((830 / 8 + 62) / 2 + 7, 9);
    const shoulder = landmark(front, 'right/shoulder-point')!;
    expect((shoulder.y - neck.y) / (neck.x - shoulder.x)).toBeCloseTo(0.404026, 5); // tan 22°
    const backNeck = landmark(back, 'back/neck-point')!;
    const backShoulder = landmark(back, 'back/shoulder-point')!;
    expect((backShoulder.y - backNeck.y) / (backShoulder.x - backNeck.x)).toBeCloseTo(0.32492, 5); // tan 18°
    expect(landmark(back, 'back/neck-centre')!.y - backNeck.y).toBeCloseTo((830 / 24 + 36) / 3, 9);
  });

  // Source: the same (memory): the front neckline's guide is two thirds down the diagonal of its rectangle and 5 mm on; the armhole
  // comes within a few mm of the chest-width line and of its own guide on the bisector.
  it('draws neckline and armhole by their guide points', () => {
    const m = { bust: 830, waist: 640, napeToWaist: 380 };
    const { front, back } = draftBlock(m);
    const c = construction(m);
    const n = c.neckWidth;
    const diagonal = Math.sqrt(n * n + (n + 5) * (n + 5));
    const k = 2 / 3 + 5 / diagonal;
    const guide = { x: -n * k, y: -c.frontNeckUp + (n + 5) * k };
    expect(nearestOnChain(findEdge(front, 'right/neckline')!.chain, guide).distance).toBeLessThan(3);
    const deepest = chainBounds(findEdge(front, 'right/armhole')!.chain).maxX;
    expect(Math.abs(deepest + c.chestWidth)).toBeLessThan(5);
    const left = landmark(back, 'back/neck-centre')!.x;
    const out = (c.halfWidth - c.guide - c.backWidth) / 6 + 8;
    const backGuide = { x: left + c.backWidth + out / Math.sqrt(2), y: -out / Math.sqrt(2) };
    expect(nearestOnChain(findEdge(back, 'back/armhole')!.chain, backGuide).distance).toBeLessThan(1e-9);
  });

  it('refuses measures it cannot be drawn with', () => {
    expect(unfitMeasure({ bust: 0, waist: 640, napeToWaist: 380 })).toBe('bust');
    expect(unfitMeasure({ bust: 830, waist: NaN, napeToWaist: 380 })).toBe('waist');
    expect(unfitMeasure({ bust: 830, waist: 900, napeToWaist: 380 })).toBe('waist');
    expect(unfitMeasure({ bust: 1200, waist: 900, napeToWaist: 340 })).toBe('napeToWaist');
    expect(() => draftBlock({ bust: 0, waist: 640, napeToWaist: 380 })).toThrow(RangeError);
  });

  // Source: Heinz, Peterson, Johnson, Kerk, J. Statistics Education 11(2), 2003 (read): chest − waist of 260 women 10.2 cm (p5)
  // to 22.8 cm (p95).
  it('ships figures whose waist is plausible beside their bust', () => {
    const all = Object.values(FIGURES);
    expect(all).toHaveLength(5);
    for (const f of all) {
      expect(f.bust - f.waist).toBeGreaterThan(102);
      expect(f.bust - f.waist).toBeLessThan(228);
      expect(unfitMeasure(f)).toBeUndefined();
    }
  });
});

describe('any block', () => {
  const each = (check: (m: Parameters<typeof draftBlock>[0], b: ReturnType<typeof draftBlock>) => void) =>
    fc.assert(
      fc.property(anyMeasures, (m) => check(m, draftBlock(m))),
      { numRuns: 60 },
    );

  it('has simple clockwise outlines with edges joined bit for bit', () => {
    each((_, { front, back }) => {
      for (const piece of [front, back]) {
        const { edges } = piece.parts[0]!;
        edges.forEach((e, i) => {
          const next = edges[(i + 1) % edges.length]!;
          expect(samePoint(chainEnd(e.chain), chainStart(next.chain))).toBe(true);
        });
        expect(isSimple(chainOf(edges))).toBe(true);
        expect(signedArea(chainOf(edges))).toBeGreaterThan(20_000);
      }
    });
  });

  // Source: trade notes, metric block notes (memory): front and back side seams equal once the dart is closed, 0.5 mm.
  it('has side seams of one length and a back shoulder 3 to 10 mm longer', () => {
    each((_, { front, back, facts }) => {
      const side = length(front, 'right/side-upper') + length(front, 'right/side-lower');
      expect(Math.abs(side - length(back, 'back/side'))).toBeLessThan(1e-9);
      const ease = length(back, 'back/shoulder') - length(front, 'right/shoulder');
      expect(ease).toBeCloseTo(facts.backShoulderEase, 9);
      expect(ease).toBeGreaterThanOrEqual(3);
      expect(ease).toBeLessThanOrEqual(10);
    });
  });

  // Source: trade notes (memory): square at centre front's neck and waist; neck and armhole run smoothly across the shoulder; corners
  // add to 180° at waist and armhole.
  it('is square at centre front and smooth where front and back meet', () => {
    each((_, { front, back }) => {
      expect(Math.abs(arrives(front, 'right/neckline').y)).toBeLessThan(1e-12);
      expect(Math.abs(leaves(front, 'right/waist').y)).toBeLessThan(1e-12);
      const corner = (piece: Piece, into: string, outOf: string) =>
        Math.acos(-dot(arrives(piece, into), leaves(piece, outOf)));
      const pairs = [
        [corner(front, 'right/shoulder', 'right/neckline'), corner(back, 'back/neckline', 'back/shoulder')],
        [corner(front, 'right/armhole', 'right/shoulder'), corner(back, 'back/shoulder', 'back/armhole')],
        [corner(front, 'right/side-upper', 'right/armhole'), corner(back, 'back/armhole', 'back/side')],
        [corner(front, 'right/waist', 'right/side-lower'), corner(back, 'back/side', 'back/waist')],
      ];
      for (const [a, b] of pairs) expect(degrees(a! + b!)).toBeCloseTo(180, 6);
    });
  });

  it('has a smooth armhole where the dart was closed', () => {
    each((_, { front, back }) => {
      for (const { chain } of [findEdge(front, 'right/armhole')!, findEdge(back, 'back/armhole')!]) {
        for (let i = 1; i < chain.length; i++)
          expect(dot(tangentAt(chain[i - 1]!, 1), tangentAt(chain[i]!, 0))).toBeGreaterThan(1 - 1e-9);
      }
    });
  });

  // Source: the draft (Bunka, memory): B/4 − 2.5 degrees, B in cm; sewn point 1 in off (memory: Joseph-Armstrong).
  it('keeps the dart angle through the move to the side, and backs the sewn point off', () => {
    each(({ bust }, { front, facts }) => {
      expect(degrees(dartAngle(front, 'right')!)).toBeCloseTo(bust / 40 - 2.5, 9);
      expect(drawnAngle(front, 'right')!).toBeGreaterThan(facts.dartAngle);
      const sewn = landmark(front, 'right/sewn-point')!;
      expect(distance(sewn, landmark(front, 'right/bust-point')!)).toBeCloseTo(25.4, 9);
      expect(length(front, 'right/dart-upper')).toBeCloseTo(length(front, 'right/dart-lower'), 9);
    });
  });

  it('leaves at least 60 mm of side seam below the dart', () => {
    each((_, { front }) => {
      expect(length(front, 'right/side-lower')).toBeGreaterThan(60);
    });
  });
});
