import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainEnd, chainLength, chainStart } from '../../src/lib/geometry/chain.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import { bridge } from '../../src/lib/pattern/bridge.ts';
import { outlineOf } from '../../src/lib/pattern/outline.ts';
import { seamOf } from '../../src/lib/pattern/seam.ts';
import { takeOut } from '../../src/lib/pattern/take-out.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { walkSeam } from '../../src/lib/pattern/walk.ts';
import { handMade, openJoints } from './hand-made.ts';
import { ok, refusal } from './ok.ts';
import { treated } from './treated.ts';
import { real } from '../support/real.ts';

const edge = (piece: Piece, id: string) => outlineOf(piece).find((e) => e.id === id);

describe('takeOut', () => {
  it('makes both style seams equal (property)', () => {
    fc.assert(
      fc.property(
        fc.record({
          angle: real(0.15, 0.5),
          d1: real(6, 26),
          d2: real(6, 26),
          sway: real(-5, 15),
        }),
        (numbers) => {
          const { a, b } = seamOf(Object.values(treated(numbers)), 'style-line')!;
          expect(Math.abs(a.length - b.length)).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('but its intervals are not until the notch is marked again: equal totals hide unequal parts', () => {
    const { a, b } = seamOf(Object.values(treated()), 'style-line')!;
    const steps = walkSeam(a, b);
    expect(a.length).toBeCloseTo(b.length, 9);
    expect(steps.filter((s) => Math.abs(s.difference) > 1.6)).toHaveLength(4);
  });

  it('redraws the shoulder as one straight edge from its far end to the new corner', () => {
    const { lower } = handMade();
    const bridged = ok(bridge(lower, 'right', 30, 28));
    const made = ok(takeOut(bridged, 'right', 'start', 'measured', handMade().upper));
    expect(openJoints(made.seam!)).toBe(0);
    const shoulder = edge(made, 'right/shoulder.1')!;
    const old = edge(lower, 'right/shoulder.1')!;
    expect(shoulder.chain).toHaveLength(1);
    expect(shoulder.chain[0]!.kind).toBe('line');
    expect(chainStart(shoulder.chain)).toEqual(chainStart(old.chain));
    expect(chainEnd(shoulder.chain)).toEqual(chainStart(edge(made, 'line/1/b')!.chain));
    expect(shoulder.origin).toEqual(old.origin);
    const trimmed =
      chainLength(edge(bridged, 'line/1/b')!.chain) - chainLength(edge(made, 'line/1/b')!.chain);
    expect(trimmed).toBeCloseTo(bridged.treatments[0]!.excess, 9);
    expect(edge(made, 'line/1/b')!.origin.from).toBeCloseTo(trimmed, 9);
    expect(made.treatments[0]).toMatchObject({ kind: 'trimmed', trimmedEnd: 'start' });
  });

  it('redraws the whole side of the piece, both edges in one under the name of the first', () => {
    const { upper } = treated();
    const was = handMade().upper;
    expect(openJoints(upper.seam!)).toBe(0);
    const sides = outlineOf(upper).filter((e) => e.role === 'side');
    expect(sides.map((e) => e.id)).toEqual(['left/side-upper']);
    expect(chainStart(sides[0]!.chain)).toEqual(chainStart(edge(was, 'left/side-upper')!.chain));
    const span = ['left/side-upper', 'left/side-lower.1'].reduce(
      (sum, id) => sum + chainLength(edge(was, id)!.chain),
      0,
    );
    expect(sides[0]!.origin.to - sides[0]!.origin.from).toBeCloseTo(span, 9);
  });

  it('takes a typed amount, and over more than one interval', () => {
    const { lower, upper } = handMade();
    const bridged = ok(bridge({ ...lower, notches: [] }, 'right', 30, 28));
    const by4 = ok(takeOut(bridged, 'right', 'start', 4, upper));
    expect(edge(by4, 'line/1/b')!.origin.from).toBeCloseTo(4, 9);
    const third = chainLength(edge(bridged, 'line/3/b')!.chain);
    const far = ok(takeOut(bridged, 'right', 'end', third + 10, upper));
    expect(edge(far, 'line/3/b')).toBeUndefined();
    expect(openJoints(far.seam!)).toBe(0);
    const second = chainLength(edge(bridged, 'line/2/b')!.chain);
    expect(chainLength(edge(far, 'line/2/b')!.chain)).toBeCloseTo(second - 10, 9);
  });

  it('leaves every notch at its distance from the opening', () => {
    const { lower, upper } = handMade();
    const bridged = ok(bridge(lower, 'right', 30, 28));
    const made = ok(takeOut(bridged, 'right', 'start', 'measured', upper));
    const old = bridged.notches.find((m) => m.id === 'n1')!;
    const now = made.notches.find((m) => m.id === 'n1')!;
    expect(chainLength(edge(made, 'line/1/b')!.chain) - now.at).toBeCloseTo(
      chainLength(edge(bridged, 'line/1/b')!.chain) - old.at,
      9,
    );
  });

  it('refuses what is not bridged, nothing, and more than there is', () => {
    const { lower, upper } = handMade();
    const bridged = ok(bridge(lower, 'right', 30, 28));
    expect(refusal(takeOut(lower, 'right', 'start', 'measured', upper))).toBe('not-bridged');
    expect(refusal(takeOut(bridged, 'right', 'start', 0, upper))).toBe('nothing-to-take-out');
    expect(refusal(takeOut(bridged, 'right', 'start', -2, upper))).toBe('nothing-to-take-out');
    expect(refusal(takeOut(bridged, 'right', 'start', NaN, upper))).toBe('nothing-to-take-out');
    expect(refusal(takeOut(bridged, 'right', 'start', 400, upper))).toBe('take-out-too-long');
    const made = ok(takeOut(bridged, 'right', 'start', 3, upper));
    expect(refusal(takeOut(made, 'right', 'start', 3, upper))).toBe('already-treated');
  });

  it('the shoulder gets shorter or longer by what its new direction gives, measured', () => {
    const { lower } = treated();
    const { chain } = edge(lower, 'right/shoulder.1')!;
    expect(chainLength(chain)).toBeCloseTo(distance(chainStart(chain), chainEnd(chain)), 12);
  });
});
