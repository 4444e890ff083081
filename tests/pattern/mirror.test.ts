import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { chainEnd, chainLength, chainStart } from '../../src/lib/geometry/chain.ts';
import { reverseChain, transformChain } from '../../src/lib/geometry/chain-moved.ts';
import { hausdorff } from '../../src/lib/geometry/distance.ts';
import { reflectionAcross } from '../../src/lib/geometry/isometry.ts';
import { isSimple, signedArea } from '../../src/lib/geometry/outline.ts';
import { samePoint } from '../../src/lib/geometry/point.ts';
import { draftBlock } from '../../src/lib/pattern/draft.ts';
import { dartAngle } from '../../src/lib/pattern/measure.ts';
import { openOut } from '../../src/lib/pattern/mirror.ts';
import { chainOf, findEdge, landmark, seamGroups } from '../../src/lib/pattern/outline.ts';
import { PLAIN, anyMeasures } from './bodice.ts';
import { ok, refusal } from './ok.ts';

// Many runs of a property; a busy machine must not make them fail.
vi.setConfig({ testTimeout: 60_000 });

const { front } = draftBlock(PLAIN.measures);

describe('opening out', () => {
  it('refuses what is no straight edge of the half', () => {
    expect(refusal(openOut(front, 'nowhere'))).toBe('no-such-edge');
    expect(refusal(openOut(front, 'right/armhole'))).toBe('edge-not-straight');
    expect(refusal(openOut(front, 'right/dart-upper'))).toBe('edge-is-dart-leg');
    expect(refusal(openOut(ok(openOut(front, 'centre-front')), 'right/shoulder'))).toBe('already-opened');
  });

  it('doubles the paper and meets at centre front without gap or overlap', () => {
    fc.assert(
      fc.property(anyMeasures, (m) => {
        const half = draftBlock(m).front;
        const whole = ok(openOut(half, 'centre-front'));
        const { edges } = whole.parts[0]!;
        const area = signedArea(chainOf(edges));
        const one = signedArea(chainOf(half.parts[0]!.edges));
        expect(Math.abs(area / (2 * one) - 1)).toBeLessThan(1e-12);
        expect(isSimple(chainOf(edges))).toBe(true);
        edges.forEach((e, i) => {
          const next = edges[(i + 1) % edges.length]!;
          expect(samePoint(chainEnd(e.chain), chainStart(next.chain))).toBe(true);
        });
        expect(edges).toHaveLength(16);
      }),
      { numRuns: 30 },
    );
  });

  it('mirroring twice is identity: each left edge mirrored back is the right one', () => {
    fc.assert(
      fc.property(anyMeasures, (m) => {
        const half = draftBlock(m).front;
        const whole = ok(openOut(half, 'centre-front'));
        const axis = reflectionAcross({ x: 0, y: 0 }, { x: 0, y: 1 });
        for (const e of half.parts[0]!.edges) {
          if (e.id === 'centre-front') continue;
          const left = findEdge(whole, e.id.replace('right/', 'left/'))!;
          expect(reverseChain(transformChain(left.chain, axis))).toEqual(e.chain);
          expect(chainLength(left.chain)).toBeCloseTo(chainLength(e.chain), 9);
        }
      }),
      { numRuns: 30 },
    );
  });

  // Source: Margolis, Make Your Own Dress Patterns (read, secondary): left θ = right θ = the half block's θ.
  it('gives both darts the half block’s angle', () => {
    const whole = ok(openOut(front, 'centre-front'));
    const theta = dartAngle(front, 'right')!;
    expect(Math.abs(dartAngle(whole, 'right')! - theta)).toBeLessThan(1e-12);
    expect(Math.abs(dartAngle(whole, 'left')! - theta)).toBeLessThan(1e-12);
    expect(whole.darts.map((d) => [d.id, d.side, d.upper, d.bustPoint])).toEqual([
      ['right', 'right', 'right/dart-upper', 'right/bust-point'],
      ['left', 'left', 'left/dart-upper', 'left/bust-point'],
    ]);
    expect(landmark(whole, 'left/bust-point')!.x).toBe(-landmark(whole, 'right/bust-point')!.x);
    expect(landmark(whole, 'left/neck-centre')).toBeUndefined();
  });

  it('keeps the centre as an inner line and joins neckline and waist into one seam each', () => {
    const whole = ok(openOut(front, 'centre-front'));
    expect(whole.parts[0]!.lines.map((l) => l.id)).toEqual(['centre-front']);
    const groups = seamGroups(whole);
    expect(groups.find((g) => g.id === 'neckline')!.edges).toHaveLength(2);
    expect(groups.find((g) => g.id === 'waist')!.edges).toHaveLength(2);
    expect(groups.map((g) => g.id)).toContain('left/armhole');
    expect(groups.filter((g) => g.id === 'right/side')).toHaveLength(2); // the open dart lies between
  });

  it('about another edge gives the shape that comes of it, not the true front', () => {
    const wrong = ok(openOut(front, 'right/side-lower'));
    const right = ok(openOut(front, 'centre-front'));
    expect(findEdge(wrong, 'left/centre-front')).toBeDefined();
    expect(findEdge(wrong, 'right/side-lower')).toBeUndefined();
    const off = hausdorff(findEdge(wrong, 'left/shoulder')!.chain, findEdge(right, 'left/shoulder')!.chain);
    expect(off).toBeGreaterThan(100);
  });
});
