import { describe, expect, it } from 'vitest';
import { bridge } from '../../src/lib/pattern/bridge.ts';
import { easeIn } from '../../src/lib/pattern/ease.ts';
import { seamOf } from '../../src/lib/pattern/seam.ts';
import { walkSeam } from '../../src/lib/pattern/walk.ts';
import { handMade } from './hand-made.ts';
import { ok, refusal } from './ok.ts';

describe('easeIn', () => {
  it('marks the bridged excess as eased between the notches on both sides, in the order of the line', () => {
    const { upper, lower } = handMade();
    const bridged = ok(bridge(lower, 'right', 30, 30));
    for (const [x, y] of [
      ['n1', 'n2'],
      ['n2', 'n1'],
    ] as const) {
      const eased = ok(easeIn(bridged, 'right', x, y));
      expect(eased.treatments).toEqual([
        { ...bridged.treatments[0], kind: 'eased', eased: { from: 'n1', to: 'n2' } },
      ]);
      expect(eased.seam).toBe(bridged.seam);
    }
    const up = ok(easeIn(ok(bridge(upper, 'left', 30, 30)), 'left', 'n3', 'n4'));
    expect(up.treatments[0]!.eased).toEqual({ from: 'n3', to: 'n4' });
  });

  it('then nothing is left over in any walked interval but what is eased', () => {
    const { upper, lower } = handMade();
    const low = ok(easeIn(ok(bridge(lower, 'right', 30, 30)), 'right', 'n1', 'n2'));
    const up = ok(easeIn(ok(bridge(upper, 'left', 30, 30)), 'left', 'n3', 'n4'));
    const { a, b } = seamOf([up, low], 'style-line')!;
    const steps = walkSeam(a, b);
    expect(steps).toHaveLength(5);
    for (const s of steps) expect(s.difference - s.eased).toBeCloseTo(0, 9);
    expect(steps.filter((s) => Math.abs(s.difference) > 1)).toHaveLength(2);
  });

  it('refuses what is not bridged, and notches that do not hold the bridge between them', () => {
    const { lower } = handMade();
    const bridged = ok(bridge(lower, 'right', 30, 30));
    expect(refusal(easeIn(lower, 'right', 'n1', 'n2'))).toBe('not-bridged');
    expect(refusal(easeIn(bridged, 'left', 'n1', 'n2'))).toBe('not-bridged');
    expect(refusal(easeIn(bridged, 'right', 'n2', 'n3'))).toBe('ease-misses-bridge');
    expect(refusal(easeIn(bridged, 'right', 'n1', 'n1'))).toBe('ease-misses-bridge');
    expect(refusal(easeIn(bridged, 'right', 'n1', 'n9'))).toBe('no-such-notch');
    const eased = ok(easeIn(bridged, 'right', 'n1', 'n2'));
    expect(refusal(easeIn(eased, 'right', 'n1', 'n2'))).toBe('already-treated');
  });
});
