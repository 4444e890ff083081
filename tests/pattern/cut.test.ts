import { areaD, differenceD, FillRule, intersectD, type PathsD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { chainEnd, chainLength, chainStart, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { IDENTITY } from '../../src/lib/geometry/isometry.ts';
import { signedArea } from '../../src/lib/geometry/outline.ts';
import { samePoint } from '../../src/lib/geometry/point.ts';
import { cubic, line } from '../../src/lib/geometry/segment.ts';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { type Bank, cutPart, followSplits, splitEdge, spotOn } from '../../src/lib/pattern/cut.ts';
import { chainOf } from '../../src/lib/pattern/outline.ts';
import type { Edge, Part } from '../../src/lib/pattern/types.ts';
import { ok, refusal } from './ok.ts';
import { real } from '../support/real.ts';

// Many runs of a property; a busy machine must not make them fail.
vi.setConfig({ testTimeout: 60_000 });

const p = (x: number, y: number): Point => ({ x, y });

const edge = (id: string, chain: Chain): Edge => ({
  id,
  role: 'side',
  side: 'right',
  chain,
  origin: { edge: id, from: 0, to: chainLength(chain) },
});

/** A polygon, clockwise on the screen, edges e0, e1, ... */
const polygon = (points: readonly Point[]): Part => ({
  id: 'sheet',
  edges: points.map((q, i) => edge(`e${i}`, [line(q, points[(i + 1) % points.length]!)])),
  lines: [],
  landmarks: {},
  grain: 'kept',
  motion: IDENTITY,
});

const bank = (id: string): Bank => ({
  id,
  role: 'style-line',
  side: 'centre',
  origin: { edge: 'line', from: 0, to: 1 },
});

const cutBy = (part: Part, chain: Chain) =>
  cutPart(part, [{ chain, left: bank('line/1/a'), right: bank('line/1/b') }]);

const area = (part: Part): number => signedArea(chainOf(part.edges));

const square = polygon([p(0, 0), p(100, 0), p(100, 100), p(0, 100)]);

describe('cutting a sheet in two', () => {
  it('refuses a cut that does not start and end on the outline, or not in two places', () => {
    expect(refusal(cutBy(square, [line(p(10, 10), p(100, 50))]))).toBe('cut-off-outline');
    expect(refusal(cutBy(square, [line(p(0, 50), p(90, 50))]))).toBe('cut-off-outline');
    const loop = [line(p(0, 0), p(50, 20)), line(p(50, 20), p(0, 0))];
    expect(refusal(cutBy(square, loop))).toBe('cut-ends-together');
  });

  it('puts the sheets on the cutter’s hands and names both banks', () => {
    const cut = ok(cutBy(square, [line(p(50, 100), p(50, 0))])); // walking up the screen
    expect(cut.left.edges.map((e) => e.id)).toEqual(['e2.2', 'e3', 'e0.1', 'line/1/a']);
    expect(cut.right.edges.map((e) => e.id)).toEqual(['e0.2', 'e1', 'e2.1', 'line/1/b']);
    expect(area(cut.left)).toBe(5000);
    expect(area(cut.right)).toBe(5000);
    expect(cut.left.edges.find((e) => e.id === 'e0.1')!.origin).toEqual({ edge: 'e0', from: 0, to: 50 });
    expect(cut.split).toEqual([
      { edge: 'e2', at: 50 },
      { edge: 'e0', at: 50 },
    ]);
  });

  it('from corner to corner divides no edge', () => {
    const cut = ok(cutBy(square, [line(p(0, 0), p(100, 100))]));
    expect(cut.split).toEqual([]);
    expect(cut.left.edges).toHaveLength(3);
    expect(cut.right.edges).toHaveLength(3);
  });

  it('may start and end on the same edge', () => {
    const bite = [line(p(60, 0), p(50, 40)), line(p(50, 40), p(20, 0))];
    const cut = ok(cutBy(square, bite));
    expect(area(cut.left) + area(cut.right)).toBeCloseTo(10_000, 9);
    expect(Math.min(area(cut.left), area(cut.right))).toBeCloseTo(800, 9);
    for (const part of [cut.left, cut.right]) {
      part.edges.forEach((e, i) =>
        expect(samePoint(chainEnd(e.chain), chainStart(part.edges[(i + 1) % part.edges.length]!.chain))).toBe(
          true,
        ),
      );
    }
  });

  it('shares out landmarks: corners of the cut to both, others to the sheet that holds them', () => {
    const marked: Part = {
      ...square,
      landmarks: { corner: p(0, 0), far: p(100, 100), inside: p(90, 20), mouth: p(200, 200) },
    };
    const cut = ok(cutBy(marked, [line(p(0, 0), p(100, 100))]));
    expect(Object.keys(cut.left.landmarks).sort()).toEqual(['corner', 'far', 'inside']);
    expect(Object.keys(cut.right.landmarks).sort()).toEqual(['corner', 'far']);
  });

  it('lets notches follow a divided edge', () => {
    const notch = { id: 'n', at: 70, edge: 'e0', line: 'e0' };
    expect(followSplits([notch], [{ edge: 'e0', at: 50 }])).toEqual([{ ...notch, edge: 'e0.2', at: 20 }]);
    expect(followSplits([notch], [{ edge: 'e0', at: 80 }])).toEqual([{ ...notch, edge: 'e0.1' }]);
    expect(followSplits([notch], [{ edge: 'e1', at: 80 }])).toEqual([notch]);
  });

  it('counts the origin of a divided bank a against its chain', () => {
    const e: Edge = { ...edge('line/1/a', [line(p(0, 0), p(30, 0))]), role: 'style-line' };
    const bankA = { ...e, origin: { edge: 'line', from: 100, to: 130 } };
    const spot = spotOn([bankA], p(10, 0))!;
    const [first, second] = splitEdge(bankA, spot.place!, p(10, 0));
    expect(first.origin).toEqual({ edge: 'line', from: 120, to: 130 });
    expect(second.origin).toEqual({ edge: 'line', from: 100, to: 120 });
  });
});

/** A star-shaped polygon with corners at whole hundredths of a mm, clockwise on the screen. */
const star = fc.array(real(60, 200), { minLength: 5, maxLength: 14 }).map((radii) =>
  polygon(
    radii.map((r, i) => {
      const a = (2 * Math.PI * i) / radii.length;
      return p(Math.round(100 * r * Math.cos(a)) / 100, Math.round(100 * r * Math.sin(a)) / 100);
    }),
  ),
);

describe('areas of the two sheets', () => {
  // Outside check (derived): clipper2-ts (intersection and difference with the one side of the cut) on polygons, where it is exact to its grid.
  it('agree with clipper2-ts on random polygons cut through the middle', () => {
    const place = real(0.05, 0.95);
    fc.assert(
      fc.property(star, fc.nat(20), place, place, (part, k, s, t) => {
        const n = part.edges.length;
        const i = k % n;
        const j = (i + Math.floor(n / 2)) % n;
        const from = pointAtLength(part.edges[i]!.chain, chainLength(part.edges[i]!.chain) * s);
        const to = pointAtLength(part.edges[j]!.chain, chainLength(part.edges[j]!.chain) * t);
        // By way of the centre, which sees the whole star.
        const path = [line(from, p(0, 0)), line(p(0, 0), to)];
        const cut = ok(cutBy(part, path));
        expect(area(cut.left) + area(cut.right)).toBeCloseTo(area(part), 7);
        const subject: PathsD = [part.edges.map((e) => ({ ...chainStart(e.chain) }))];
        // The left hand's side of the path, as a wedge far beyond the star.
        const out = (q: Point) => ({ x: q.x * 50, y: q.y * 50 });
        const turn = (q: Point, deg: number) => {
          const a = (deg * Math.PI) / 180;
          return p(q.x * Math.cos(a) - q.y * Math.sin(a), q.x * Math.sin(a) + q.y * Math.cos(a));
        };
        // From `from` clockwise round to `to`: the stretch of the outline that the left sheet keeps.
        const sweep =
          (Math.atan2(from.x * to.y - from.y * to.x, from.x * to.x + from.y * to.y) + 2 * Math.PI) %
          (2 * Math.PI);
        const wedge = [p(0, 0), out(from)];
        for (let q = 1; q < 8; q++) wedge.push(turn(out(from), (sweep * 180 * q) / 8 / Math.PI));
        wedge.push(out(to));
        const clip: PathsD = [wedge.map((q) => ({ ...q }))];
        const theirs = [
          areaOf(intersectD(subject, clip, FillRule.NonZero, 6)),
          areaOf(differenceD(subject, clip, FillRule.NonZero, 6)),
        ];
        expect(Math.abs(area(cut.left) - theirs[0]!)).toBeLessThan(1e-2);
        expect(Math.abs(area(cut.right) - theirs[1]!)).toBeLessThan(1e-2);
      }),
      { numRuns: 60 },
    );
  });

  it('add up to 1e-9 where the edges are curves', () => {
    const curved: Part = {
      ...square,
      edges: [
        edge('e0', [cubic(p(0, 0), p(30, -20), p(70, 20), p(100, 0))]),
        edge('e1', [cubic(p(100, 0), p(130, 40), p(80, 70), p(100, 100))]),
        edge('e2', [line(p(100, 100), p(0, 100))]),
        edge('e3', [line(p(0, 100), p(0, 0))]),
      ],
    };
    fc.assert(
      fc.property(real(0.1, 0.9), real(0.1, 0.9), (s, t) => {
        const e0 = curved.edges[0]!.chain;
        const from = pointAtLength(e0, chainLength(e0) * s);
        const to = p(100 * t, 100);
        const cut = ok(cutBy(curved, [cubic(from, p(from.x, 40), p(to.x, 60), to)]));
        expect(Math.abs(area(cut.left) + area(cut.right) - area(curved))).toBeLessThan(1e-9 * area(curved));
        const both = [...cut.left.edges, ...cut.right.edges];
        const parts = both.filter((e) => e.origin.edge === 'e0');
        const sum = parts.reduce((l, e) => l + chainLength(e.chain), 0);
        expect(Math.abs(sum - chainLength(e0))).toBeLessThan(1e-9);
        for (const e of parts)
          expect(Math.abs(chainLength(e.chain) - (e.origin.to - e.origin.from))).toBeLessThan(1e-9);
      }),
      { numRuns: 60 },
    );
  });
});

const areaOf = (paths: PathsD): number => paths.reduce((sum, path) => sum + Math.abs(areaD(path)), 0);
