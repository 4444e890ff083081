import fc from 'fast-check';
import { Intersection, ShapeInfo } from 'kld-intersections';
import { describe, expect, test } from 'vitest';
import type { Chain, Cubic, Point, Segment } from '../../src/lib/geometry/types.ts';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import {
  between,
  cubic,
  line,
  pointAt,
  reverse,
  splitAt,
  transform,
} from '../../src/lib/geometry/segment.ts';
import { reverseChain, transformChain } from '../../src/lib/geometry/chain-moved.ts';
import { intersectChains, intersectSegments, selfIntersections } from '../../src/lib/geometry/intersect.ts';
import { paper } from '../support/paper.ts';
import { cubics, motions, points } from './arbitrary.ts';

const p = (x: number, y: number): Point => ({ x, y });
const arch = cubic(p(0, 0), p(0, 40), p(60, 40), p(60, 0));

const toPaper = (s: Segment): InstanceType<typeof paper.Curve> => {
  const [b, c] = s.kind === 'cubic' ? [s.b, s.c] : [s.a, s.d];
  return new paper.Curve(
    new paper.Point(s.a.x, s.a.y),
    new paper.Point(b.x - s.a.x, b.y - s.a.y),
    new paper.Point(c.x - s.d.x, c.y - s.d.y),
    new paper.Point(s.d.x, s.d.y),
  );
};
const toKld = (s: Cubic): ReturnType<typeof ShapeInfo.cubicBezier> =>
  ShapeInfo.cubicBezier(s.a.x, s.a.y, s.b.x, s.b.y, s.c.x, s.c.y, s.d.x, s.d.y);

describe('degenerate segments', () => {
  const dot = line(p(30, 0), p(30, 0));
  test('a point on a line meets it, a point off it does not', () => {
    expect(intersectSegments(line(p(0, 0), p(60, 0)), dot)).toEqual([{ t: 0.5, u: 0, point: p(30, 0) }]);
    expect(intersectSegments(dot, line(p(0, 0), p(60, 0)))).toEqual([{ t: 0, u: 0.5, point: p(30, 0) }]);
    expect(intersectSegments(line(p(0, 1), p(60, 1)), dot)).toEqual([]);
    expect(intersectSegments(dot, dot).length).toBe(1);
  });
  test('a point on a curve meets it', () => {
    const crown = line(p(30, 30), p(30, 30));
    const [m, ...more] = intersectSegments(crown, arch);
    expect([m?.u, m?.point, more]).toEqual([0.5, p(30, 30), []]);
    expect(intersectSegments(line(p(30, 31), p(30, 31)), arch)).toEqual([]);
    const grain = cubic(p(30, 30), p(30, 30), p(30, 30), p(30, 30));
    expect(intersectSegments(grain, arch).length).toBe(1);
    expect(intersectSegments(arch, grain).length).toBe(1);
  });
  test('segments far apart do not meet', () => {
    expect(intersectSegments(arch, line(p(100, 0), p(200, 0)))).toEqual([]);
    expect(intersectSegments(arch, transform(arch, { a: 1, b: 0, c: 0, d: 1, e: 0, f: 500 }))).toEqual([]);
  });
});

// Source: derived by hand.
describe('line with line', () => {
  test('a crossing', () => {
    expect(intersectSegments(line(p(0, 0), p(10, 10)), line(p(0, 10), p(10, 0)))).toEqual([
      { t: 0.5, u: 0.5, point: p(5, 5) },
    ]);
  });
  test('an end on the other line keeps its bits', () => {
    const end = p(3.3, 6.6);
    const [m] = intersectSegments(line(p(0, 0), p(7, 14)), line(end, p(20, 0)));
    expect(m?.u).toBe(0);
    expect(samePoint(m!.point, end)).toBe(true);
  });
  test('parallel lines do not meet', () => {
    expect(intersectSegments(line(p(0, 0), p(10, 0)), line(p(0, 1e-6), p(10, 1e-6)))).toEqual([]);
    expect(intersectSegments(line(p(0, 0), p(10, 0)), line(p(11, 0), p(20, 0)))).toEqual([]);
  });
  test('lines on one carrier that touch at an end meet there', () => {
    expect(intersectSegments(line(p(0, 0), p(10, 0)), line(p(10, 0), p(20, 0)))).toEqual([
      { t: 1, u: 0, point: p(10, 0), tangent: true },
    ]);
    expect(intersectSegments(line(p(0, 0), p(10, 0)), line(p(-5, 0), p(0, 0)))).toEqual([
      { t: 0, u: 1, point: p(0, 0), tangent: true },
    ]);
  });
  test('lines that run along each other give the ends of the stretch', () => {
    const met = intersectSegments(line(p(0, 0), p(10, 0)), line(p(15, 0), p(5, 0)));
    expect(met.map(({ t, u, overlap }) => [t, u, overlap])).toEqual([
      [0.5, 1, true],
      [1, 0.5, true],
    ]);
  });
});

describe('line with cubic', () => {
  // Source: derived. The arch's height is 120 t (1 − t): 22.5 at a quarter and three quarters, 30 at the crown.
  test('crossings in order along the first', () => {
    const met = intersectSegments(line(p(100, 22.5), p(-100, 22.5)), arch);
    expect(met.map(({ u }) => u)).toEqual([0.75, 0.25]);
    expect(met.every((m) => m.tangent !== true)).toBe(true);
  });
  test('a touch at the crown is one meeting, within 1e-9 mm either way; farther off it is none or two', () => {
    for (const y of [30, 30 + 9e-10, 30 - 9e-10]) {
      const met = intersectSegments(line(p(0, y), p(60, y)), arch);
      expect(met.length).toBe(1);
      expect(met[0]!.tangent).toBe(true);
      expect(Math.abs(met[0]!.u - 0.5)).toBeLessThan(1e-9);
    }
    expect(intersectSegments(line(p(0, 30 + 2e-9), p(60, 30 + 2e-9)), arch)).toEqual([]);
    expect(intersectSegments(line(p(0, 30 - 2e-9), p(60, 30 - 2e-9)), arch).length).toBe(2);
  });
  test('a line that leaves a curve along its tangent meets it in the joint only', () => {
    for (const angle of [0, 0.3, 1.1, 2.5]) {
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const turned = transform(arch, { a: c, b: s, c: -s, d: c, e: 0.1, f: 0.7 }) as Cubic;
      const on = line(
        turned.d,
        p(turned.d.x + (turned.d.x - turned.c.x), turned.d.y + (turned.d.y - turned.c.y)),
      );
      const met = intersectSegments(turned, on);
      expect(met.map(({ t, u, tangent }) => [t, u, tangent])).toEqual([[1, 0, true]]);
      expect(samePoint(met[0]!.point, turned.d)).toBe(true);
    }
  });
  test('a straight cubic on the line gives the ends of the stretch', () => {
    const met = intersectSegments(line(p(0, 0), p(60, 0)), cubic(p(30, 0), p(50, 0), p(70, 0), p(90, 0)));
    expect(met.map(({ t, overlap }) => [t, overlap])).toEqual([
      [0.5, true],
      [1, true],
    ]);
  });
});

describe('cubic with cubic', () => {
  test('halves of one curve meet in their joint only, bit for bit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 50, max: 950 }), (n) => {
        const [first, rest] = splitAt(arch, n / 1000);
        const met = intersectSegments(first, rest);
        expect(met.map(({ t, u }) => [t, u])).toEqual([[1, 0]]);
        expect(samePoint(met[0]!.point, first.d)).toBe(true);
      }),
    );
  });
  // Source: derived. The second is the first at twice the size, from the corner they share: a convex shape lies inside its own
  // enlargement from a point of its edge, and touches it there only. Both leave straight down.
  test('ends that touch with parallel tangents meet there only', () => {
    const flatter = cubic(p(0, 0), p(0, 80), p(120, 80), p(120, 0));
    const met = intersectSegments(arch, flatter);
    expect(met.map(({ t, u, tangent }) => [t, u, tangent])).toEqual([[0, 0, true]]);
    const back = intersectSegments(reverse(arch), flatter);
    expect(back.map(({ t, u }) => [t, u])).toEqual([[1, 0]]);
    const cusp = cubic(p(0, 0), p(0, 40), p(-60, 40), p(-60, 0));
    expect(intersectSegments(arch, cusp).map(({ t, u, tangent }) => [t, u, tangent])).toEqual([[0, 0, true]]);
  });
  // Source: derived. Mirrored arches touch crown to crown.
  test('a touch in the middle of both is one meeting, whatever way it lies', () => {
    const other = cubic(p(0, 60), p(0, 20), p(60, 20), p(60, 60));
    for (const angle of [0, 0.4, 1.3]) {
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const m = { a: c, b: s, c: -s, d: c, e: 11, f: -7 };
      const met = intersectSegments(transform(arch, m), transform(other, m));
      expect(met.length).toBe(1);
      expect(met[0]!.tangent).toBe(true);
      expect(Math.abs(met[0]!.t - 0.5)).toBeLessThan(1e-6);
    }
    const apart = transform(other, { a: 1, b: 0, c: 0, d: 1, e: 0, f: 1e-6 });
    expect(intersectSegments(arch, apart)).toEqual([]);
    const into = transform(other, { a: 1, b: 0, c: 0, d: 1, e: 0, f: -1e-6 });
    expect(intersectSegments(arch, into).length).toBe(2);
  });
  // Source: derived. With three control points in common the curves part as t³: x(t) = 60 t and y = ± 9 t³.
  test('ends that touch with the same curvature meet there only', () => {
    const up = cubic(p(-30, 0), p(-10, 0), p(10, 0), p(30, 9));
    const down = cubic(p(-30, 0), p(-10, 0), p(10, 0), p(30, -9));
    expect(intersectSegments(up, down).map(({ t, u, tangent }) => [t, u, tangent])).toEqual([[0, 0, true]]);
  });
  test('a crossing at angle zero is one meeting', () => {
    const wave = cubic(p(-30, -27), p(-10, 9), p(10, -9), p(30, 27));
    const met = intersectSegments(wave, cubic(p(-30, 0), p(-10, 0), p(10, 0), p(30, 0)));
    expect(met.map(({ t, u }) => [t, u])).toEqual([[0.5, 0.5]]);
  });
  // Source: derived. The tip lies at (50, 75), half way; both legs come from above.
  test('the tip of a cusp on another curve is met once', () => {
    const cusp = cubic(p(0, 0), p(100, 100), p(0, 100), p(100, 0));
    const met = intersectSegments(cusp, cubic(p(0, 75), p(30, 75), p(60, 75), p(100, 75)));
    expect(met.length).toBe(1);
    expect(distance(met[0]!.point, p(50, 75))).toBeLessThan(1e-8);
    expect(intersectSegments(cusp, line(p(0, 75), p(100, 75))).length).toBe(1);
  });
  test('an end on the other curve keeps its bits', () => {
    const crown = pointAt(arch, 0.3);
    const other = cubic(crown, p(0, 60), p(-30, 60), p(-30, 70));
    const met = intersectSegments(arch, other);
    expect(met.map(({ u }) => u)).toEqual([0]);
    expect(met[0]!.t).toBeCloseTo(0.3, 12);
    expect(samePoint(met[0]!.point, crown)).toBe(true);
  });
  test('the same curve, run either way, gives the ends of the stretch', () => {
    for (const other of [arch, reverse(arch)]) {
      const met = intersectSegments(arch, other);
      expect(met.map(({ t, overlap }) => [t, overlap])).toEqual([
        [0, true],
        [1, true],
      ]);
    }
  });
  test('parts of one curve that lap give the ends of the lap', () => {
    const met = intersectSegments(between(arch, 0, 0.6), between(arch, 0.4, 1));
    expect(met.length).toBe(2);
    expect(met.every((m) => m.overlap)).toBe(true);
    expect(met[0]!.u).toBe(0);
    expect(distance(met[0]!.point, pointAt(arch, 0.4))).toBeLessThan(1e-9);
    expect(met[1]!.t).toBe(1);
    expect(distance(met[1]!.point, pointAt(arch, 0.6))).toBeLessThan(1e-9);
  });
  test('curves that run 0.03 mm apart all along do not meet', () => {
    expect(intersectSegments(arch, transform(arch, { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0.03 })).length).toBe(
      0,
    );
  });

  // Source (derived): kld-intersections and paper's core, outside libraries. Crossings by less than a hundredth of a radian, or nearer to
  // an end than 1e-4, are judged differently by each and are left to the tests above.
  const clear = (s: Segment, u: Segment): boolean =>
    intersectSegments(s, u).every((m) => {
      if (Math.min(m.t, m.u, 1 - m.t, 1 - m.u) < 1e-4) return false;
      const a = pointAt(s, m.t + 1e-5);
      const b = pointAt(s, m.t - 1e-5);
      const c = pointAt(u, m.u + 1e-5);
      const d = pointAt(u, m.u - 1e-5);
      const turn = (a.x - b.x) * (c.y - d.y) - (a.y - b.y) * (c.x - d.x);
      return Math.abs(turn) > 0.01 * distance(a, b) * distance(c, d);
    });
  const matches = (ours: readonly { point: Point }[], theirs: readonly Point[], within: number): void => {
    expect(theirs.length).toBe(ours.length);
    for (const m of ours) expect(Math.min(...theirs.map((q) => distance(m.point, q)))).toBeLessThan(within);
  };
  const small = fc.tuple(points, points, points, points).map(([a, b, c, d]) => cubic(a, b, c, d));
  test('random cubics cross where paper says', () => {
    fc.assert(
      fc.property(small, cubics, (s, u) => {
        fc.pre(clear(s, u));
        matches(
          intersectSegments(s, u),
          toPaper(s)
            .getIntersections(toPaper(u))
            .map((x) => x.point),
          1e-5,
        );
      }),
      { numRuns: 1000 },
    );
  });
  test('random lines cross cubics where paper says', () => {
    fc.assert(
      fc.property(points, points, cubics, (a, d, u) => {
        const s = line(a, d);
        fc.pre(distance(a, d) > 1 && clear(s, u));
        matches(
          intersectSegments(s, u),
          toPaper(s)
            .getIntersections(toPaper(u))
            .map((x) => x.point),
          1e-5,
        );
      }),
      { numRuns: 1000 },
    );
  });
  test('every crossing that kld-intersections finds is found', () => {
    fc.assert(
      fc.property(small, cubics, (s, u) => {
        // On curves that are single points kld-intersections runs out of stack.
        fc.pre(distance(s.a, s.b) > 1 && distance(u.a, u.b) > 1);
        const ours = intersectSegments(s, u);
        for (const q of Intersection.intersect(toKld(s), toKld(u)).points) {
          expect(Math.min(Infinity, ...ours.map((m) => distance(m.point, q)))).toBeLessThan(1e-3);
        }
      }),
      { numRuns: 300 },
    );
  });
  test('both curves are at the crossing to 1e-9 mm, and either order finds the same', () => {
    fc.assert(
      fc.property(cubics, cubics, (s, u) => {
        const met = intersectSegments(s, u);
        for (const m of met) expect(distance(pointAt(s, m.t), pointAt(u, m.u))).toBeLessThanOrEqual(1e-9);
        expect(intersectSegments(u, s).length).toBe(met.length);
        expect(met.length).toBeLessThanOrEqual(9);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('chains', () => {
  const square: Chain = [
    line(p(0, 0), p(100, 0)),
    line(p(100, 0), p(100, 100)),
    line(p(100, 100), p(0, 100)),
    line(p(0, 100), p(0, 0)),
  ];
  test('an empty chain meets nothing', () => {
    expect(intersectChains([], square)).toEqual([]);
    expect(selfIntersections([])).toEqual([]);
  });
  // Source: derived. The diagonal passes exactly through two corners.
  test('a crossing exactly on a corner is one crossing', () => {
    const met = intersectChains(square, [line(p(-50, -50), p(150, 150))]);
    expect(met.map(({ a, b }) => [a.segment, a.t, a.length, b.t])).toEqual([
      [0, 0, 0, 0.25],
      [2, 0, 200, 0.75],
    ]);
    expect(samePoint(met[1]!.point, square[2]!.a)).toBe(true);
  });
  test('corner to corner is one crossing too', () => {
    const zigzag = [line(p(150, 50), p(100, 100)), line(p(100, 100), p(150, 150))];
    expect(intersectChains(square, zigzag).map(({ a, b }) => [a.length, b.segment, b.t])).toEqual([
      [200, 1, 0],
    ]);
  });
  test('a line along an edge gives the ends of what they share', () => {
    const met = intersectChains(square, [line(p(20, 0), p(80, 0))]);
    expect(met.map(({ a, b, overlap }) => [a.length, b.length, overlap])).toEqual([
      [20, 0, true],
      [80, 60, true],
    ]);
  });
  test('a figure of eight crosses itself once', () => {
    const eight = [
      line(p(0, 0), p(100, 100)),
      line(p(100, 100), p(100, 0)),
      line(p(100, 0), p(0, 100)),
      line(p(0, 100), p(0, 0)),
    ];
    const met = selfIntersections(eight);
    expect(met.map(({ point }) => point)).toEqual([p(50, 50)]);
    expect([met[0]!.a.segment, met[0]!.b.segment]).toEqual([0, 2]);
  });
  // Source: derived. Symmetric about x = 50, so the loop's two parameters sum to 1 and the crossing lies on x = 50.
  test('a single cubic that loops crosses itself where it should', () => {
    const loop = cubic(p(0, 0), p(120, 100), p(-20, 100), p(100, 0));
    const [met, ...more] = selfIntersections([loop]);
    expect(more).toEqual([]);
    expect(met!.a.t + met!.b.t).toBeCloseTo(1, 12);
    expect(met!.point.x).toBeCloseTo(50, 10);
    expect(distance(pointAt(loop, met!.a.t), pointAt(loop, met!.b.t))).toBeLessThan(1e-10);
    expect(selfIntersections([cubic(p(0, 0), p(0, 40), p(60, 40), p(60, 0))])).toEqual([]);
  });
  test('an edge folded back on itself is reported by the end of the fold', () => {
    const spike = [line(p(0, 0), p(100, 0)), line(p(100, 0), p(40, 0))];
    expect(selfIntersections(spike).map(({ a, overlap }) => [a.length, overlap])).toEqual([[40, true]]);
  });
  test('moving or turning chains round changes no crossing', () => {
    fc.assert(
      fc.property(cubics, cubics, motions, (s, u, m) => {
        const met = intersectChains([s], [u]);
        fc.pre(met.every((x) => x.tangent !== true));
        expect(intersectChains(transformChain([s], m), transformChain([u], m)).length).toBe(met.length);
        expect(intersectChains([s], reverseChain([u])).length).toBe(met.length);
      }),
    );
  });
});
