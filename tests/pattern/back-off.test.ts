import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainEnd, chainStart } from '../../src/lib/geometry/chain.ts';
import { isSimple } from '../../src/lib/geometry/outline.ts';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import { angleSum } from '../../src/lib/pattern/angles.ts';
import { backOff, sewnDart } from '../../src/lib/pattern/back-off.ts';
import { draftBlock } from '../../src/lib/pattern/draft.ts';
import { extendDart } from '../../src/lib/pattern/extend.ts';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import { dartAngle } from '../../src/lib/pattern/measure.ts';
import { chainOf, landmark, outlineOf, seamGroups } from '../../src/lib/pattern/outline.ts';
import { trueLegs } from '../../src/lib/pattern/true-legs.ts';
import { real } from '../support/real.ts';
import { darted, point } from './darted.ts';
import { ok } from './ok.ts';

const degrees = (radians: number) => (radians * 180) / Math.PI;
const radians = (degrees: number) => (degrees * Math.PI) / 180;

describe('backing a dart off', () => {
  // Source: trade notes, dart theory (derived): L 180, 28°, back-off 12.7 and L 130, 28°, 25.4.
  it('changes the angle as drawn, not the intake', () => {
    const a = sewnDart(ok(backOff(darted({ leg: 180, angle: radians(28) }), 'slash', 12.7)), 'slash')!;
    expect(degrees(a.angle)).toBeCloseTo(30.1, 2);
    expect(a.intake).toBeCloseTo(87.09, 2);
    const b = sewnDart(ok(backOff(darted({ leg: 130, angle: radians(28) }), 'slash', 25.4)), 'slash')!;
    expect(degrees(b.angle)).toBeCloseTo(34.68, 2);
  });

  it('stands on the middle of the dart, with legs alike, on any dart', () => {
    const any = fc.record({ leg: real(90, 260), angle: real(0.08, 0.9), by: real(0, 60) });
    fc.assert(
      fc.property(any, ({ leg, angle, by }) => {
        const piece = darted({ leg, angle });
        const sewn = sewnDart(ok(backOff(piece, 'slash', by)), 'slash')!;
        expect(Math.abs(sewn.legs[0] - sewn.legs[1])).toBeLessThan(1e-9);
        expect(sewn.point.x).toBeCloseTo(0, 9);
        expect(sewn.point.y).toBeCloseTo(by, 9);
        // Source: derived, from the triangle with the same intake and a shorter height.
        const half = Math.atan2(leg * Math.sin(angle / 2), leg * Math.cos(angle / 2) - by);
        expect(sewn.angle).toBeCloseTo(2 * half, 9);
        expect(sewn.intake).toBeCloseTo(2 * leg * Math.sin(angle / 2), 9);
      }),
    );
  });

  it('leaves the paper, the dart itself and the rest of the outline as they were, and is drawn anew each time', () => {
    for (const measures of Object.values(FIGURES)) {
      const block = draftBlock(measures).front;
      const front = ok(extendDart(block, 'right', landmark(block, 'right/bust-point')!));
      const once = ok(backOff(front, 'right', 25));
      const again = ok(backOff(once, 'right', 19));
      expect(again).toEqual(ok(backOff(front, 'right', 19)));
      expect(again.parts).toEqual(front.parts);
      expect(dartAngle(again, 'right')).toBe(dartAngle(front, 'right'));
      expect(angleSum([again], 'right/bust-point')).toBe(angleSum([front], 'right/bust-point'));
      const outline = outlineOf(again);
      expect([...outline.map((e) => e.id)].sort()).toEqual([...outlineOf(front).map((e) => e.id)].sort());
      outline.forEach((e, i) =>
        expect(samePoint(chainEnd(e.chain), chainStart(outline[(i + 1) % outline.length]!.chain))).toBe(true),
      );
      expect(isSimple(chainOf(outline))).toBe(true);
      expect(distance(again.finished![0]!.sewnPoint, landmark(front, 'right/bust-point')!)).toBeCloseTo(
        19,
        9,
      );
    }
  });

  it('takes a dart that the block draws to its sewn point from the bust point', () => {
    const { front, facts } = draftBlock(FIGURES.F1);
    const sewn = sewnDart(ok(backOff(front, 'right', facts.backOff)), 'right')!;
    expect(distance(sewn.point, landmark(front, 'right/sewn-point')!)).toBeLessThan(1e-9);
    expect(sewn).toEqual(sewnDart(front, 'right'));
  });

  it('of a dart with legs over an alternate pivot goes from the middle between the two, and trues the legs', () => {
    const angle = radians(12);
    // Alternate pivots 19 mm from the bust point, 50° off the leg, turned about it like the legs.
    const off = (turn: number) => point(19 * Math.sin(turn), 19 * Math.cos(turn));
    const via = [off(radians(50) + angle / 2), off(radians(50) - angle / 2)] as const;
    const piece = darted({ leg: 180, angle, via });
    const middle = point((via[0].x + via[1].x) / 2, (via[0].y + via[1].y) / 2);
    expect(sewnDart(piece, 'slash')).toBeUndefined();
    const backed = ok(backOff(piece, 'slash', 12.7));
    const sewn = sewnDart(backed, 'slash')!;
    expect(distance(sewn.tip, middle)).toBeLessThan(1e-9);
    expect(distance(sewn.point, middle)).toBeCloseTo(12.7, 9);
    const differ = Math.abs(sewn.legs[0] - sewn.legs[1]);
    expect(differ).toBeGreaterThan(0.5);

    const trued = ok(trueLegs(backed, 'slash'));
    const after = sewnDart(trued, 'slash')!;
    expect(Math.abs(after.legs[0] - after.legs[1])).toBeLessThan(1e-9);
    expect(after.point).toEqual(sewn.point);
    expect(trued.finished![0]!.trued).toBeCloseTo(differ, 9);
    const outline = outlineOf(trued);
    outline.forEach((e, i) =>
      expect(samePoint(chainEnd(e.chain), chainStart(outline[(i + 1) % outline.length]!.chain))).toBe(true),
    );
    expect(isSimple(chainOf(outline))).toBe(true);
    expect(seamGroups(trued).map((g) => g.id)).toContain('dart/slash');
  });

  it('trues legs that are alike by nothing', () => {
    const piece = ok(backOff(darted({ leg: 160, angle: 0.4 }), 'slash', 15));
    expect(outlineOf(ok(trueLegs(piece, 'slash')))).toEqual(outlineOf(piece));
  });

  it('refuses a point beyond the edge, a length that is none, a dart that is not there or not open', () => {
    const piece = darted({ leg: 120, angle: 0.3 });
    expect(backOff(piece, 'slash', 130)).toMatchObject({ refused: { code: 'back-off-too-far' } });
    expect(backOff(piece, 'slash', -1)).toMatchObject({ refused: { code: 'bad-length' } });
    expect(backOff(piece, 'slash', NaN)).toMatchObject({ refused: { code: 'bad-length' } });
    expect(backOff(piece, 'other', 10)).toMatchObject({ refused: { code: 'no-such-dart' } });
    expect(backOff(darted({ leg: 120, angle: 0 }), 'slash', 10)).toMatchObject({
      refused: { code: 'dart-not-open' },
    });
    const closed = { ...piece, darts: [{ ...piece.darts[0]!, state: 'closed' as const }] };
    expect(backOff(closed, 'slash', 10)).toMatchObject({ refused: { code: 'dart-is-closed' } });
  });
});
