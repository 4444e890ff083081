import { describe, expect, it } from 'vitest';
import { chainEnd, chainLength, chainStart, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { polyline } from '../../src/lib/geometry/polyline.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { isSimple, signedArea } from '../../src/lib/geometry/outline.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import { applyTo, reflectionAcross } from '../../src/lib/geometry/isometry.ts';
import { carryNotches, cutLine, setAllowance, setCorner } from '../../src/lib/pattern/allowance.ts';
import { cutSeamOf } from '../../src/lib/pattern/cut-seam.ts';
import { chainOf, seamGroups } from '../../src/lib/pattern/outline.ts';
import { seamOf } from '../../src/lib/pattern/seam.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { walkSeam } from '../../src/lib/pattern/walk.ts';
import { handMade, handMadeBack } from './hand-made.ts';
import { ok, refusal } from './ok.ts';
import { treated } from './treated.ts';

const allowed = (piece: Piece, width: number, other: Readonly<Record<string, number>> = {}): Piece =>
  seamGroups(piece).reduce((p, g) => ok(setAllowance(p, g.id, other[g.id] ?? width)), piece);

/** Allowances in use: 1/4, 3/8, 1/2, 5/8 in (read: fashion-incubator.com and study cards, via the trade notes), in mm. */
const INCHES = [
  ['1/4', 6.35],
  ['3/8', 9.525],
  ['1/2', 12.7],
  ['5/8', 15.875],
] as const;

describe('cutLine', () => {
  const { lower, upper } = treated();

  it('is not there until every group has a width', () => {
    let piece = lower;
    const groups = seamGroups(lower);
    expect(groups.map((g) => g.id).sort()).toEqual(
      ['left/side', 'right/armhole', 'right/shoulder', 'right/side', 'style-line', 'waist'].sort(),
    );
    for (const g of groups) {
      expect(cutLine(piece)).toBeUndefined();
      piece = ok(setAllowance(piece, g.id, 10));
    }
    expect(cutLine(piece)).toBeDefined();
  });

  it.each(INCHES)('runs %s in outside every seam edge', (_, width) => {
    let checked = 0;
    for (const piece of [lower, upper]) {
      const made = cutLine(allowed(piece, width))!;
      expect(signedArea(made.cut)).toBeGreaterThan(
        signedArea(chainOf(seamGroups(piece).flatMap((g) => g.edges))),
      );
      expect(isSimple(made.cut)).toBe(true);
      for (const g of seamGroups(piece)) {
        const seam = chainOf(g.edges);
        const cut = made.groups[g.id]!;
        const length = chainLength(cut);
        // The middle of each cut edge, clear of the corners at its ends.
        for (let k = 6; k <= 14; k++) {
          const p = pointAtLength(cut, (length * k) / 20);
          const near = nearestOnChain(seam, p);
          // Clear of corners, also of those inside a group (a side whose two parts meet at the closed dart): mitres reach farther.
          const atEnd = Math.min(
            ...seam.flatMap((x) => [distance(near.point, x.a), distance(near.point, x.d)]),
          );
          if (atEnd < 1) continue;
          expect(Math.abs(near.distance - width)).toBeLessThan(0.03);
          checked++;
        }
      }
    }
    expect(checked).toBeGreaterThan(90);
  });

  it('leaves a bound edge without allowance on its seam line', () => {
    const piece = allowed(upper, 10, { neckline: 0 });
    const neck = seamGroups(piece).find((g) => g.id === 'neckline')!;
    const cut = cutLine(piece)!.groups['neckline']!;
    for (const p of polyline(cut, 0.1)) {
      expect(nearestOnChain(chainOf(neck.edges), p).distance).toBeLessThan(1e-9);
    }
  });

  it('gives the corner the form that was asked for: reflected, the end lies flush when pressed', () => {
    const square = { ...handMadeBack(handMade()), id: 'quad' };
    // Side and waist are straight: reflect the waist's cut line in the side's seam line.
    const piece = allowed(square, 12, { 'back/waist': 20 });
    const rule = { before: 'back/side', after: 'waist', form: 'reflect', first: 'back/side' } as const;
    const made = cutLine(ok(setCorner(piece, rule)))!;
    const side = chainOf(seamGroups(piece).find((g) => g.id === 'back/side')!.edges);
    const fold = reflectionAcross(chainStart(side), chainEnd(side));
    const from = chainEnd(made.groups['back/side']!);
    const to = chainStart(made.groups['waist']!);
    // Derived: 90° corner, so the mirrored waist cut line is itself level; pressed over the side seam its end meets the waist's.
    expect(nearestOnChain(made.groups['waist']!, applyTo(fold, from)).distance).toBeLessThan(1e-9);
    expect(Math.abs(to.y - from.y)).toBeLessThan(1e-9);
    // The rule may be named in the other order.
    const turned = cutLine(ok(setCorner(piece, { ...rule, before: 'waist', after: 'back/side' })))!;
    expect(turned.cut).toEqual(made.cut);
  });

  it('sews a style line before what it runs into, unless told otherwise', () => {
    const piece = allowed(lower, 10);
    const rule = { before: 'right/shoulder', after: 'style-line', form: 'square' } as const;
    const silent = cutLine(ok(setCorner(piece, rule)))!;
    const said = cutLine(ok(setCorner(piece, { ...rule, first: 'style-line' })))!;
    const other = cutLine(ok(setCorner(piece, { ...rule, first: 'right/shoulder' })))!;
    expect(silent.cut).toEqual(said.cut);
    expect(silent.cut).not.toEqual(other.cut);
  });

  it('refuses widths, groups and corners that make no sense', () => {
    expect(refusal(setAllowance(lower, 'neckline', 10))).toBe('no-such-group');
    for (const width of [-1, NaN, Infinity, 400]) {
      expect(refusal(setAllowance(lower, 'waist', width))).toBe('bad-width');
    }
    const rule = { before: 'waist', after: 'style-line', form: 'mitre' } as const;
    expect(refusal(setCorner(lower, rule))).toBe('no-such-corner');
    const first = { before: 'right/shoulder', after: 'style-line', form: 'square', first: 'waist' } as const;
    expect(refusal(setCorner(lower, first))).toBe('first-not-at-corner');
    expect(refusal(setCorner(lower, { ...rule, form: 'round' as 'mitre' }))).toBe('no-such-form');
  });
});

describe('carryNotches', () => {
  const { lower, upper } = treated();

  it('waits for the cut line', () => {
    expect(refusal(carryNotches(lower))).toBe('no-cut-line');
  });

  it.each(INCHES)('carries every notch square out to the cut line at %s in', (_, width) => {
    const piece = ok(carryNotches(allowed(lower, width)));
    const { notches, cut } = cutLine(piece)!;
    expect(notches.map((m) => m.id).sort()).toEqual(['n1', 'n2', 'n3', 'n4']);
    for (const m of notches) {
      expect(distance(m.from, m.to)).toBeCloseTo(width, 9);
      expect(nearestOnChain(cut, m.to).distance).toBeLessThan(0.03);
      const nick = distance(m.to, m.nick);
      // Outside check: a nick 2 to 3 mm deep, at least 1/8 in from the seam line (read: training notes, via the trade notes).
      expect(nick).toBeGreaterThanOrEqual(2);
      expect(nick).toBeLessThanOrEqual(3);
      expect(distance(m.nick, m.from)).toBeGreaterThanOrEqual(3.175 - 1e-9);
    }
  });

  it('cuts no deeper than 2.8 mm in a 6 mm allowance', () => {
    // Outside check, derived in the trade notes: 6 − 3.175 = 2.825 mm.
    for (const m of cutLine(ok(carryNotches(allowed(upper, 6))))!.notches) {
      expect(distance(m.to, m.nick)).toBeLessThanOrEqual(2.8);
      expect(distance(m.to, m.nick)).toBeGreaterThan(2);
    }
    for (const m of cutLine(ok(carryNotches(allowed(upper, 3))))!.notches) expect(m.nick).toEqual(m.to);
  });

  it('leaves ghosts behind', () => {
    const ghosts = { ...lower, notches: lower.notches.map((m) => ({ ...m, ghost: true })) };
    expect(cutLine(ok(carryNotches(allowed(ghosts, 10))))!.notches).toEqual([]);
  });
});

describe('cutSeamOf', () => {
  const { upper, lower } = treated();
  const back = handMadeBack(handMade());

  it('waits for the cut lines', () => {
    expect(cutSeamOf([upper, lower, back], 'style-line')).toBeUndefined();
    expect(cutSeamOf([upper, lower, back], 'right/shoulder')).toBeUndefined();
  });

  it('shows why cut lines are not walked: seams that agree do not', () => {
    const set = [upper, lower, back].map((p) => ok(carryNotches(allowed(p, 15.875))));
    const seam = seamOf(set, 'style-line')!;
    const cut = cutSeamOf(set, 'style-line')!;
    expect(Math.abs(seam.a.length - seam.b.length)).toBeLessThan(1e-6);
    expect(Math.abs(cut.a.length - cut.b.length)).toBeGreaterThan(3.2);
    expect(walkSeam(cut.a, cut.b).map((s) => s.to)).toEqual(['n1', 'n2', 'n3', 'n4', 'end']);
    // A shoulder in two portions counts the allowance in the middle twice.
    const shoulder = cutSeamOf(set, 'right/shoulder')!;
    expect(shoulder.a.length).toBeGreaterThan(seamOf(set, 'right/shoulder')!.a.length + 15);
    expect(cutSeamOf(set, 'left/side')!.b.pieces).toEqual(['back']);
  });
});
