import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainLength, chainStart, chainEnd, tangentAtLength } from '../../src/lib/geometry/chain.ts';
import { polyline } from '../../src/lib/geometry/polyline.ts';
import { subchain } from '../../src/lib/geometry/subchain.ts';
import { segmentLength } from '../../src/lib/geometry/length.ts';
import { cross, dot, sub, unit } from '../../src/lib/geometry/point.ts';
import { tangentAt } from '../../src/lib/geometry/segment.ts';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { blend, bridge } from '../../src/lib/pattern/bridge.ts';
import { openings } from '../../src/lib/pattern/openings.ts';
import { outlineOf } from '../../src/lib/pattern/outline.ts';
import { handMade, openJoints, PLAIN } from './hand-made.ts';
import { ok, refusal } from './ok.ts';
import { real } from '../support/real.ts';

/** Sum of the absolute turns along points, radians. */
function turning(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 2; i < points.length; i++) {
    const u = sub(points[i - 1]!, points[i - 2]!);
    const v = sub(points[i]!, points[i - 1]!);
    sum += Math.abs(Math.atan2(cross(u, v), dot(u, v)));
  }
  return sum;
}

describe('blend', () => {
  it('is the circular arc between two equal straight sides', () => {
    // Derived: sides of s mm, opening of a turn θ at distance d; chord c = 2 s cos(θ/2) + e, arc c (θ/2) / sin(θ/2).
    for (const [d, theta, s] of [
      [18, 0.32, 30],
      [25.4, 0.5236, 40],
      [10, 0.25, 20],
    ] as const) {
      const e = 2 * d * Math.sin(theta / 2);
      const c = 2 * s * Math.cos(theta / 2) + e;
      const u = { x: Math.cos(theta / 2), y: -Math.sin(theta / 2) };
      const v = { x: Math.cos(theta / 2), y: Math.sin(theta / 2) };
      const made = blend({ x: 0, y: 0 }, u, { x: c, y: 0 }, v);
      const radius = c / (2 * Math.sin(theta / 2));
      // Such a cubic leaves the circle by at most 2.7253e-4 R at a quarter turn, falling with the sixth power (memory: Goldapp,
      // CAGD 8, 1991), so its length is off by at most θ times that.
      const off = 2.7253e-4 * radius * Math.pow(theta / (Math.PI / 2), 6) * theta;
      expect(Math.abs(segmentLength(made) - radius * theta)).toBeLessThan(off);
    }
  });
});

describe('bridge', () => {
  it('replaces both connector banks and runs smoothly into both sides, joint for joint', () => {
    const { upper, lower } = handMade();
    for (const [piece, dart, names] of [
      [lower, 'right', ['line/1/b', 'bridge-right', 'line/2/b', 'line/3/b']],
      [upper, 'left', ['line/3/a', 'bridge-left', 'line/2/a', 'line/1/a']],
    ] as const) {
      const made = ok(bridge(piece, dart, 30, 25));
      const seam = made.seam!;
      expect(openJoints(seam)).toBe(0);
      expect(seam.filter((e) => e.role === 'style-line').map((e) => e.id)).toEqual(names);
      expect(seam.some((e) => e.role === 'connector')).toBe(false);
      const k = seam.findIndex((e) => e.id === `bridge-${dart}`);
      const arch = seam[k]!.chain;
      const before = seam[k - 1]!.chain;
      const after = seam[k + 1]!.chain;
      const turnIn = cross(tangentAt(before[before.length - 1]!, 1), tangentAt(arch[0]!, 0));
      const turnOut = cross(tangentAt(arch[0]!, 1), tangentAt(after[0]!, 0));
      expect(Math.abs(turnIn)).toBeLessThan(1e-9);
      expect(Math.abs(turnOut)).toBeLessThan(1e-9);
      // The sheet itself is untouched.
      expect(made.parts).toBe(piece.parts);
    }
  });

  it('counts before and after along the line as drawn, on either bank', () => {
    const { upper, lower, feet } = handMade();
    const low = ok(bridge(lower, 'right', 30, 12)).seam!;
    const up = ok(bridge(upper, 'left', 30, 12)).seam!;
    const origin = (edges: typeof low, id: string) => edges.find((e) => e.id === id)!.origin;
    expect(origin(low, 'bridge-right').from).toBeCloseTo(feet[0] - 30, 9);
    expect(origin(low, 'bridge-right').to).toBeCloseTo(feet[0] + 12, 9);
    expect(origin(up, 'bridge-left').from).toBeCloseTo(feet[1] - 30, 9);
    expect(origin(up, 'bridge-left').to).toBeCloseTo(feet[1] + 12, 9);
    for (const e of [...low, ...up].filter((x) => x.id.startsWith('line/'))) {
      expect(chainLength(e.chain)).toBeCloseTo(e.origin.to - e.origin.from, 8);
    }
  });

  it('the excess differs from the width only by what the blending can cost (property)', () => {
    fc.assert(
      fc.property(
        fc.record({
          angle: real(0.15, 0.5),
          d1: real(6, 26),
          sway: real(-5, 15),
          before: real(10, 44),
          after: real(10, 39),
        }),
        ({ before, after, ...numbers }) => {
          const { lower } = handMade({ ...PLAIN, ...numbers });
          const made = ok(bridge(lower, 'right', before, after));
          const outline = outlineOf(lower);
          const k = outline.findIndex((e) => e.role === 'connector');
          const into = outline[k - 1]!.chain;
          const old: Chain[] = [
            subchain(into, chainLength(into) - before, Infinity),
            subchain(outline[k + 2]!.chain, 0, after),
          ];
          const path = [...polyline(old[0]!, 1e-4), ...polyline(old[1]!, 1e-4)];
          const e = 2 * numbers.d1 * Math.sin(numbers.angle / 2);
          const size = before + e + after;
          // Derived (Schur): a path of length l that turns by K < π in all spans at least l cos(K/2); both paths share the chord.
          const arch = made.seam!.find((x) => x.id === 'bridge-right')!.chain;
          const most = Math.max(turning(path), turning(polyline(arch, 1e-4)));
          const cost = size * (1 / Math.cos(most / 2) - 1);
          expect(Math.abs(made.treatments[0]!.excess - e)).toBeLessThanOrEqual(cost + 1e-6);
          // And it stays a plain sum of edges: longer than before by exactly that.
          const sum = (edges: typeof outline) =>
            edges.reduce((s, x) => (x.role === 'style-line' ? s + chainLength(x.chain) : s), 0);
          expect(sum(made.seam!) - sum(outline)).toBeCloseTo(made.treatments[0]!.excess, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('stays readable as an opening afterwards, with the excess measured against the partner', () => {
    const { upper, lower } = handMade();
    const made = ok(bridge(lower, 'right', 30, 30));
    const before = openings(lower)[0]!;
    const after = openings(made, upper)[0]!;
    expect(after.width).toBe(before.width);
    expect(after.excess).toBeCloseTo(made.treatments[0]!.excess, 9);
    expect(after.excess).not.toBeCloseTo(before.excess, 2);
  });

  it('keeps each notch where it stands on the cloth', () => {
    const { upper, lower } = handMade();
    for (const [piece, dart] of [
      [lower, 'right'],
      [upper, 'left'],
    ] as const) {
      const made = ok(bridge(piece, dart, 30, 20));
      for (const m of piece.notches) {
        const now = made.notches.find((x) => x.id === m.id)!;
        const was = outlineOf(piece).find((e) => e.id === m.edge)!.chain;
        const is = outlineOf(made).find((e) => e.id === now.edge)!.chain;
        const p = chainEnd(subchain(was, 0, m.at));
        const q = chainEnd(subchain(is, 0, now.at));
        expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeLessThan(1e-8);
      }
    }
  });

  it('refuses what cannot be bridged', () => {
    const { upper, lower } = handMade();
    expect(refusal(bridge(lower, 'left', 20, 20))).toBe('no-opening');
    expect(refusal(bridge(lower, 'right', -1, 20))).toBe('bad-length');
    expect(refusal(bridge(lower, 'right', NaN, 20))).toBe('bad-length');
    expect(refusal(bridge(lower, 'right', 50, 20))).toBe('bridge-covers-notch');
    expect(refusal(bridge(lower, 'right', 20, 41))).toBe('bridge-covers-notch');
    expect(refusal(bridge({ ...upper, notches: [] }, 'left', 20, 500))).toBe('bridge-too-long');
    expect(refusal(bridge(ok(bridge(lower, 'right', 30, 30)), 'right', 20, 20))).toBe('already-bridged');
    // A dart that was never moved leaves the two banks one on the other.
    expect(refusal(bridge(handMade({ ...PLAIN, angle: 0 }).lower, 'right', 20, 20))).toBe('no-opening');
  });

  it('has a start and an end on the line even without any blending', () => {
    const { lower } = handMade();
    const made = ok(bridge(lower, 'right', 0, 0));
    const arch = made.seam!.find((e) => e.id === 'bridge-right')!.chain;
    const [open] = openings(lower);
    expect(chainStart(arch)).toEqual(open!.foot);
    expect(chainEnd(arch)).toEqual(open!.farFoot);
    // Derived: the arc of radius d about the bust point, d θ long: square to both connector banks.
    expect(chainLength(arch)).toBeCloseTo(PLAIN.d1 * PLAIN.angle, 4);
    expect(dot(unit(tangentAtLength(arch, 0)), unit(sub(open!.farFoot, open!.foot)))).toBeGreaterThan(0.9);
  });
});
