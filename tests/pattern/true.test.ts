import { describe, expect, it } from 'vitest';
import { chainEnd, chainLength, chainStart, tangentAtLength } from '../../src/lib/geometry/chain.ts';
import { signedArea } from '../../src/lib/geometry/outline.ts';
import { cross, sub, unit } from '../../src/lib/geometry/point.ts';
import { chainOf, outlineOf } from '../../src/lib/pattern/outline.ts';
import { seamOf } from '../../src/lib/pattern/seam.ts';
import { trueBack } from '../../src/lib/pattern/true.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { handMade, handMadeBack, openJoints } from './hand-made.ts';
import { ok, refusal } from './ok.ts';
import { treated } from './treated.ts';

const edge = (piece: Piece, id: string) => outlineOf(piece).find((e) => e.id === id)!;

describe('trueBack', () => {
  const back = handMadeBack(handMade(), 5);
  const { upper, lower } = treated();
  const fronts = [upper, lower];

  it('makes the back shoulder as long as the front as sewn, and the block ease longer', () => {
    const made = ok(trueBack(back, 'right/shoulder', fronts));
    const { a, b } = seamOf([...fronts, back, made], 'right/shoulder')!;
    expect(b.pieces).toEqual(['back-right']);
    expect(b.length - a.length).toBeCloseTo(5, 9);
    // Before truing it was off by what redrawing the shoulder changed.
    expect(Math.abs(edge(back, 'back/shoulder').origin.to - 5 - a.length)).toBeGreaterThan(0.1);
    expect(openJoints(made.seam!)).toBe(0);
  });

  it('moves the shoulder point along the shoulder and keeps how the armhole leaves it', () => {
    const made = ok(trueBack(back, 'right/shoulder', fronts));
    const was = edge(back, 'back/shoulder').chain;
    const is = edge(made, 'back/shoulder').chain;
    expect(chainStart(is)).toEqual(chainStart(was));
    const along = unit(sub(chainEnd(was), chainStart(was)));
    expect(Math.abs(cross(along, sub(chainEnd(is), chainStart(was))))).toBeLessThan(1e-9);
    const t0 = tangentAtLength(edge(back, 'back/armhole').chain, 0);
    const t1 = tangentAtLength(edge(made, 'back/armhole').chain, 0);
    expect(Math.abs(cross(t0, t1))).toBeLessThan(1e-9);
    expect(chainEnd(edge(made, 'back/armhole').chain)).toEqual(chainEnd(edge(back, 'back/armhole').chain));
  });

  it('trues a side by its underarm corner, on the mirrored half for the left', () => {
    const made = ok(trueBack(back, 'left/side', fronts));
    expect(made.id).toBe('back-left');
    expect(openJoints(made.seam!)).toBe(0);
    expect(signedArea(chainOf(outlineOf(made)))).toBeGreaterThan(0);
    const { a, b } = seamOf([...fronts, back, made], 'left/side')!;
    expect(b.length).toBeCloseTo(a.length, 9);
    const side = edge(made, 'back/side').chain;
    expect(chainLength(side)).toBeCloseTo(a.length, 9);
    // The waist corner stays: the mirror image of the drafted one, across centre back.
    const centre = chainStart(edge(back, 'back/centre-back').chain).x;
    const corner = chainEnd(edge(back, 'back/side').chain);
    expect(chainStart(side).x).toBeCloseTo(2 * centre - corner.x, 9);
    expect(chainStart(side).y).toBeCloseTo(corner.y, 9);
  });

  it('mirrors a half without changing the length of any edge', () => {
    const made = ok(trueBack(back, 'left/shoulder', [handMade().upper, handMade().lower]));
    for (const e of outlineOf(back)) {
      if (e.role === 'shoulder' || e.role === 'armhole') continue;
      expect(chainLength(edge(made, e.id).chain)).toBeCloseTo(chainLength(e.chain), 9);
    }
  });

  it('trues the same half further, and keeps the set it belongs to', () => {
    const once = ok(trueBack({ ...back, id: 'back@woven' }, 'right/shoulder', fronts));
    expect(once.id).toBe('back-right@woven');
    const twice = ok(trueBack(once, 'right/side', fronts));
    expect(twice.id).toBe('back-right@woven');
    expect(edge(twice, 'back/shoulder').chain).toEqual(edge(once, 'back/shoulder').chain);
    expect(openJoints(twice.seam!)).toBe(0);
  });

  it('takes another ease when told so', () => {
    const made = ok(trueBack(back, 'right/shoulder', fronts, 0));
    const { a, b } = seamOf([...fronts, made], 'right/shoulder')!;
    expect(b.length).toBeCloseTo(a.length, 9);
  });

  it('refuses seams that are not there', () => {
    expect(refusal(trueBack(back, 'style-line', fronts))).toBe('no-such-seam');
    expect(refusal(trueBack(back, 'right/neckline', fronts))).toBe('no-such-seam');
    expect(refusal(trueBack(back, 'right/shoulder', []))).toBe('no-such-seam');
    const right = ok(trueBack(back, 'right/shoulder', fronts));
    expect(refusal(trueBack(right, 'left/side', fronts))).toBe('wrong-back');
    expect(refusal(trueBack(back, 'right/shoulder', fronts, -1e6))).toBe('bad-number');
  });
});
