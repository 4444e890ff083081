import { describe, expect, it } from 'vitest';
import { outlineOf } from '../../src/lib/pattern/outline.ts';
import { notchesToMarkAgain, renotch } from '../../src/lib/pattern/renotch.ts';
import { seamOf, styleRun } from '../../src/lib/pattern/seam.ts';
import { walkSeam } from '../../src/lib/pattern/walk.ts';
import { handMade } from './hand-made.ts';
import { ok, refusal } from './ok.ts';
import { treated } from './treated.ts';

describe('renotch', () => {
  it('is asked for exactly between opening and trimmed end', () => {
    const { upper, lower } = treated();
    expect(notchesToMarkAgain(lower)).toEqual(['n1']);
    expect(notchesToMarkAgain(upper)).toEqual(['n4']);
    expect(notchesToMarkAgain(handMade().lower)).toEqual([]);
  });

  it('marks at the partner distance from the trimmed end, so that every interval agrees; the old notch stays as a ghost', () => {
    const { upper, lower } = treated();
    const low = ok(renotch(lower, 'n1', styleRun(upper)));
    const up = ok(renotch(upper, 'n4', styleRun(low)));
    expect(notchesToMarkAgain(low)).toEqual([]);
    expect(notchesToMarkAgain(up)).toEqual([]);
    const { a, b } = seamOf([up, low], 'style-line')!;
    for (const s of walkSeam(a, b)) expect(s.difference).toBeCloseTo(0, 8);
    const ghost = low.notches.find((m) => m.ghost)!;
    const old = lower.notches.find((m) => m.id === 'n1')!;
    expect(ghost).toEqual({ ...old, ghost: true });
    expect(low.notches.filter((m) => m.id === 'n1')).toHaveLength(2);
  });

  it('takes a typed distance from the trimmed end, and may be done again without losing the first place', () => {
    const { lower, upper } = treated();
    const once = ok(renotch(lower, 'n1', styleRun(upper), 120));
    const twice = ok(renotch(once, 'n1', styleRun(upper), 140));
    const place = twice.notches.find((m) => m.id === 'n1' && !m.ghost)!;
    expect(styleRun(twice)!.notches.find((m) => m.id === 'n1')!.at).toBeCloseTo(140, 9);
    expect(twice.notches.filter((m) => m.ghost)).toEqual(once.notches.filter((m) => m.ghost));
    // On the upper piece mm count from the side end.
    const up = ok(renotch(upper, 'n4', undefined, 100));
    const run = styleRun(up)!;
    expect(run.length - run.notches.find((m) => m.id === 'n4')!.at).toBeCloseTo(100, 9);
    expect(outlineOf(twice).some((e) => e.id === place.edge)).toBe(true);
  });

  it('refuses notches that need no marking again and places off the seam', () => {
    const { lower, upper } = treated();
    expect(refusal(renotch(lower, 'n2', styleRun(upper)))).toBe('notch-not-on-trimmed-stretch');
    expect(refusal(renotch(lower, 'n9', styleRun(upper)))).toBe('no-such-notch');
    expect(refusal(renotch(handMade().lower, 'n1', styleRun(upper)))).toBe('notch-not-on-trimmed-stretch');
    expect(refusal(renotch(lower, 'n1', undefined))).toBe('no-partner-notch');
    expect(refusal(renotch(lower, 'n1', styleRun(upper), -3))).toBe('notch-off-seam');
    expect(refusal(renotch(lower, 'n1', styleRun(upper), 9999))).toBe('notch-off-seam');
    expect(refusal(renotch(lower, 'n1', styleRun(upper), NaN))).toBe('notch-off-seam');
  });
});
