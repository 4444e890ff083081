import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainEnd, chainLength, chainStart } from '../../src/lib/geometry/chain.ts';
import { polyline } from '../../src/lib/geometry/polyline.ts';
import { transformChain } from '../../src/lib/geometry/chain-moved.ts';
import { reflectionAcross } from '../../src/lib/geometry/isometry.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { isSimple } from '../../src/lib/geometry/outline.ts';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import type { Chain } from '../../src/lib/geometry/types.ts';
import { cutLine, setAllowance } from '../../src/lib/pattern/allowance.ts';
import { backOff, sewnDart } from '../../src/lib/pattern/back-off.ts';
import { capDart } from '../../src/lib/pattern/cap.ts';
import { draftBlock } from '../../src/lib/pattern/draft.ts';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import { frontAndBack } from '../../src/lib/pattern/front-back.ts';
import { chainOf, findEdge, outlineOf, seamGroups } from '../../src/lib/pattern/outline.ts';
import { walkSeam } from '../../src/lib/pattern/walk.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { real } from '../support/real.ts';
import { darted, point } from './darted.ts';
import { ok } from './ok.ts';

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** How far points of a chain lie from another at most, mm. */
const strays = (from: Chain, on: Chain): number =>
  Math.max(...polyline(from, 0.05).map((p) => nearestOnChain(on, p).distance));

const capOf = (piece: Piece, dart: string): readonly [Chain, Chain] => {
  const [one, two] = outlineOf(piece).filter((e) => e.role === 'cap' && e.dart === dart);
  return [one!.chain, two!.chain];
};

/** Folds the paper: the cap's two halves as they come to lie when the dart is folded onto the leg of that end. */
function folded(piece: Piece, dart: string, onStart: boolean): readonly [Chain, Chain] {
  const sewn = sewnDart(piece, dart)!;
  const [one, two] = capOf(piece, dart);
  const top = chainEnd(one);
  const overLeg = reflectionAcross(sewn.point, sewn.ends[onStart ? 0 : 1]);
  const overFold = reflectionAcross(sewn.point, top);
  const [near, far] = onStart ? [one, two] : [two, one];
  return [transformChain(near, overLeg), transformChain(transformChain(far, overFold), overLeg)];
}

function closedAndSimple(piece: Piece): void {
  const outline = outlineOf(piece);
  outline.forEach((e, i) =>
    expect(samePoint(chainEnd(e.chain), chainStart(outline[(i + 1) % outline.length]!.chain))).toBe(true),
  );
  expect(isSimple(chainOf(outline))).toBe(true);
}

describe('the folded cap', () => {
  // Source: trade notes, dart theory (derived): L sin(θ/2) tan(θ/2) above the chord when the edge is square to both legs.
  it('stands as high above the chord as it must where the edge is square to the legs', () => {
    const high = (leg: number, angle: number) => {
      const [one] = capOf(ok(capDart(darted({ leg, angle }), 'slash', 'centre')), 'slash');
      return chainEnd(one).y - chainStart(one).y;
    };
    expect(high(180, radians(30))).toBeCloseTo(12.48, 2);
    expect(high(130, radians(15))).toBeCloseTo(2.23, 2);
    for (const leg of [100, 150, 220])
      for (const d of [8, 20, 44])
        expect(high(leg, radians(d))).toBeCloseTo(
          leg * Math.sin(radians(d / 2)) * Math.tan(radians(d / 2)),
          9,
        );
  });

  // Source: trade notes (derived): the cap is what the folded paper covers.
  it('lies exactly on the edge beside it when the dart is folded, whatever the edge and the fold', () => {
    const any = fc.record({
      leg: real(90, 260),
      angle: real(0.08, 0.7),
      meets: real(1.2, 1.9),
      bend: real(-12, 12),
      by: real(0, 30),
      fold: fc.constantFrom('centre' as const, 'side' as const),
    });
    fc.assert(
      fc.property(any, ({ by, fold, ...shape }) => {
        const piece = ok(capDart(ok(backOff(darted(shape), 'slash', by)), 'slash', fold));
        closedAndSimple(piece);
        const beside = findEdge(piece, fold === 'centre' ? 'right/waist.1' : 'right/waist.2')!.chain;
        for (const half of folded(piece, 'slash', fold === 'centre'))
          expect(strays(half, beside)).toBeLessThan(1e-6);
        expect(piece.finished![0]).toMatchObject({ dart: 'slash', fold });
      }),
    );
  });

  it('goes with the fold: another direction takes its place and another shape where the edges differ', () => {
    for (const measures of Object.values(FIGURES)) {
      const { front } = draftBlock(measures, 'waist');
      const towards = (fold: 'centre' | 'side') => ok(capDart(front, 'right/waist-dart', fold));
      const centre = towards('centre');
      const again = ok(
        capDart(ok(capDart(centre, 'right/waist-dart', 'side')), 'right/waist-dart', 'centre'),
      );
      expect(again).toEqual(centre);
      const inner = findEdge(centre, 'right/waist-inner')!.chain;
      const outer = findEdge(front, 'right/waist-outer')!.chain;
      for (const half of folded(centre, 'right/waist-dart', true))
        expect(strays(half, inner)).toBeLessThan(1e-6);
      for (const half of folded(towards('side'), 'right/waist-dart', false))
        expect(strays(half, outer)).toBeLessThan(1e-6);
    }
    // The straight side meets the legs of the side dart at different angles.
    const { front } = draftBlock(FIGURES.F1);
    const top = (fold: 'up' | 'down') => chainEnd(capOf(ok(capDart(front, 'right', fold)), 'right')[0]);
    expect(distance(top('up'), top('down'))).toBeGreaterThan(5);
  });

  it('of a side dart folds up or down, belongs to the side and leaves the seam as long as it was', () => {
    for (const measures of Object.values(FIGURES)) {
      const { front, back } = draftBlock(measures);
      for (const fold of ['down', 'up'] as const) {
        const piece = ok(capDart(front, 'right', fold));
        closedAndSimple(piece);
        const beside = findEdge(piece, fold === 'down' ? 'right/side-lower' : 'right/side-upper')!.chain;
        const round = outlineOf(piece).filter((e) => e.role !== 'cap');
        // Above the dart the side may be shorter than the fold is deep: then the paper beyond the corner counts too.
        const on = fold === 'down' ? beside : chainOf(round);
        for (const half of folded(piece, 'right', fold === 'down'))
          expect(strays(half, on)).toBeLessThan(1e-6);
        const side = seamGroups(piece).find((g) => g.id === 'right/side')!;
        expect(side.edges.map((e) => e.id)).toEqual([
          'right/side-lower',
          'right/side/cap-right.1',
          'right/side/cap-right.2',
          'right/side-upper',
        ]);
        const before = frontAndBack([front], back, 'right/side')!;
        const after = frontAndBack([piece], back, 'right/side')!;
        expect(after.a.length).toBe(before.a.length);
        expect(walkSeam(after.a, after.b)).toEqual(walkSeam(before.a, before.b));
      }
    }
  });

  it('has its allowance in one with the seam it belongs to', () => {
    for (const measures of Object.values(FIGURES)) {
      let piece = ok(capDart(draftBlock(measures).front, 'right', 'down'));
      for (const g of seamGroups(piece)) piece = ok(setAllowance(piece, g.id, 12.7));
      const { cut, groups, notes } = cutLine(piece)!;
      expect(isSimple(cut)).toBe(true);
      expect(notes).toEqual([]);
      expect(Object.keys(groups)).toContain('right/side');
      const [one] = capOf(piece, 'right');
      // The cap's point lies its width inside the cut line.
      expect(nearestOnChain(cut, chainEnd(one)).distance).toBeCloseTo(12.7, 2);
    }
  });

  it('keeps the legs and the fold as lines to fold along', () => {
    const piece = ok(capDart(ok(backOff(darted({ leg: 170, angle: 0.4 }), 'slash', 19)), 'slash', 'side'));
    const sewn = sewnDart(piece, 'slash')!;
    const lines = piece.parts.flatMap((p) => p.lines);
    expect(lines.map((l) => [l.id, l.kind, l.dart])).toEqual([
      ['sewn-slash/b', 'fold', 'slash'],
      ['sewn-slash/a', 'fold', 'slash'],
      ['fold-slash', 'fold', 'slash'],
    ]);
    expect(chainLength(lines[0]!.chain)).toBeCloseTo(sewn.legs[0], 9);
    expect(chainStart(lines[2]!.chain)).toEqual(sewn.point);
    // Backing off again takes the cap and the lines away.
    const again = ok(backOff(piece, 'slash', 12));
    expect(again.parts.flatMap((p) => p.lines)).toEqual([]);
    expect(outlineOf(again).some((e) => e.role === 'cap')).toBe(false);
  });

  it('is refused where the legs differ or bend, and in a direction in which the mouth does not lie', () => {
    const piece = darted({ leg: 170, angle: 0.4 });
    expect(capDart(piece, 'slash', 'up')).toMatchObject({ refused: { code: 'fold-not-clear' } });
    const via = [point(12, 20), point(-4, 22)] as const;
    const bent = darted({ leg: 170, angle: 0.4, via });
    expect(capDart(bent, 'slash', 'side')).toMatchObject({ refused: { code: 'legs-bent' } });
    const uneven = ok(backOff(bent, 'slash', 12));
    expect(capDart(uneven, 'slash', 'side')).toMatchObject({ refused: { code: 'legs-differ' } });
    expect(capDart(darted({ leg: 90, angle: 0.9, meets: 2.9 }), 'slash', 'side')).toMatchObject({
      refused: { code: 'cap-misses-fold' },
    });
  });
});
