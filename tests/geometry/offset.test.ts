import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain, Point, Segment } from '../../src/lib/geometry/types.ts';
import {
  offsetOutline,
  MITRE_LIMIT,
  type CornerForm,
  type OffsetEdge,
} from '../../src/lib/geometry/offset.ts';
import { flushError } from '../../src/lib/geometry/offset-flush.ts';
import { chainEnd, chainStart } from '../../src/lib/geometry/chain.ts';
import { reverseChain, transformChain } from '../../src/lib/geometry/chain-moved.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { cubic, derivativeAt, line, pointAt, tangentAt } from '../../src/lib/geometry/segment.ts';
import { signedArea } from '../../src/lib/geometry/outline.ts';
import { isSimple } from '../../src/lib/geometry/intersect.ts';
import { compose, reflectionAcross } from '../../src/lib/geometry/isometry.ts';
import { angles, motions } from './arbitrary.ts';

const p = (x: number, y: number): Point => ({ x, y });

/** Straight edges through the points, clockwise on the screen. */
function polygon(points: readonly [number, number][], widths: number | readonly number[]): OffsetEdge[] {
  const corners = points.map(([x, y]) => p(x, y));
  return corners.map((a, i) => ({
    chain: [line(a, corners[(i + 1) % corners.length]!)],
    width: typeof widths === 'number' ? widths : widths[i]!,
  }));
}

const joints = (c: Chain): [number, number][] => c.map((s) => [s.a.x, s.a.y]);

function expectJoints(c: Chain, expected: readonly [number, number][]): void {
  expect(c.length).toBe(expected.length);
  for (const [x, y] of expected) {
    expect(Math.min(...c.map((s) => distance(s.a, p(x, y)))), `a joint at ${x}, ${y}`).toBeLessThan(1e-9);
  }
}

const square: [number, number][] = [
  [0, 0],
  [100, 0],
  [100, 100],
  [0, 100],
];

describe('what is refused', () => {
  it('an outline that is empty, open, or has no length', () => {
    expect(() => offsetOutline([], [])).toThrow(RangeError);
    expect(() =>
      offsetOutline([{ chain: [line(p(0, 0), p(1, 0)), line(p(1, 0), p(0, 1))], width: 1 }], []),
    ).toThrow(/open/);
    expect(() => offsetOutline([{ chain: [line(p(0, 0), p(0, 0))], width: 1 }], [])).toThrow(/length/);
  });

  it('a width that is negative or not a number', () => {
    expect(() => offsetOutline(polygon(square, -1), [])).toThrow(/width/);
    expect(() => offsetOutline(polygon(square, NaN), [])).toThrow(/width/);
  });
});

describe('straight edges (derived: closed forms)', () => {
  it('a square grows by its width on every side', () => {
    const { cut, edges, corners } = offsetOutline(polygon(square, 10), []);
    expect(joints(cut)).toEqual([
      [-10, -10],
      [110, -10],
      [110, 110],
      [-10, 110],
    ]);
    expect(edges.map((e) => e.length)).toEqual([1, 1, 1, 1]);
    expect(corners.map((c) => c.length)).toEqual([0, 0, 0, 0]);
  });

  it('each edge keeps its own width, and a bound edge its seam line', () => {
    const { cut } = offsetOutline(polygon(square, [10, 5, 40, 0]), []);
    expectJoints(cut, [
      [0, -10],
      [105, -10],
      [105, 140],
      [0, 140],
    ]);
  });

  it('with no allowance at all the cut line is the seam line, bit for bit', () => {
    const edges = polygon(square, 0);
    expect(offsetOutline(edges, []).cut).toEqual(edges.flatMap((e) => e.chain));
  });

  it('an inward corner is trimmed to the crossing', () => {
    const l: [number, number][] = [
      [0, 0],
      [50, 0],
      [50, 50],
      [100, 50],
      [100, 100],
      [0, 100],
    ];
    expectJoints(offsetOutline(polygon(l, 10), []).cut, [
      [-10, -10],
      [60, -10],
      [60, 40],
      [110, 40],
      [110, 110],
      [-10, 110],
    ]);
  });

  it('trims past an edge that is shorter than its neighbours take, and says so', () => {
    // Two slopes of 1 in 2 and a 4 mm floor: with 10 mm the slopes meet above the floor's own line.
    const valley: [number, number][] = [
      [0, 0],
      [100, 50],
      [104, 50],
      [204, 0],
      [204, 200],
      [0, 200],
    ];
    const { cut, edges, notes } = offsetOutline(polygon(valley, 10), []);
    // On the middle line x = 102, 51 − 10·√5/2 by the slope 1/2.
    const y = 51 - 5 * Math.sqrt(5);
    expect(Math.min(...cut.map((s) => distance(s.a, p(102, y))))).toBeLessThan(1e-9);
    expect(edges[1]).toEqual([]);
    expect(notes.map((n) => n.kind)).toContain('swallowed');
    expect(isSimple(cut)).toBe(true);
  });

  it('the allowances of a narrow notch swallow each other: not an error, but said', () => {
    const notch: [number, number][] = [
      [0, 0],
      [110, 0],
      [110, 150],
      [140, 150],
      [140, 0],
      [250, 0],
      [250, 450],
      [0, 450],
    ];
    expect(offsetOutline(polygon(notch, 10), []).notes).toEqual([]);
    // Also where they just meet, 15 + 15 = 30.
    for (const w of [15, 18]) {
      const { cut, edges, notes } = offsetOutline(polygon(notch, w), []);
      expect(signedArea(cut)).toBeCloseTo((250 + 2 * w) * (450 + 2 * w), 4);
      expect(edges[2]).toEqual([]);
      expect(notes.some((n) => n.kind === 'overlap')).toBe(true);
      expect(isSimple(cut)).toBe(true);
    }
  });
});

describe('corner forms (derived: closed forms)', () => {
  // A corner of 60 degrees inside: the second edge leans back under the first.
  const r3 = Math.sqrt(3);
  const sharp: [number, number][] = [
    [0, 0],
    [100, 0],
    [50, 50 * r3],
  ];
  // And one of 120 degrees inside.
  const wide: [number, number][] = [
    [0, 0],
    [100, 0],
    [150, 50 * r3],
    [0, 50 * r3],
  ];

  it('a mitre lies where both cut lines, run on, meet', () => {
    const { cut } = offsetOutline(polygon(sharp, [10, 6, 10]), []);
    // n1·x = 10, n2·x = 6 from the corner (100, 0): n1 = (0, −1), n2 = (√3/2, 1/2).
    expect(Math.min(...cut.map((s) => distance(s.a, p(100 + 22 / r3, -10))))).toBeLessThan(1e-9);
  });

  it('a mitre is squared off when it would reach farther than the limit', () => {
    const spike: [number, number][] = [
      [0, 0],
      [200, 10],
      [0, 20],
    ];
    const { cut, notes } = offsetOutline(polygon(spike, 8), []);
    expect(notes.map((n) => [n.kind, n.edge])).toEqual([['squaredOff', 0]]);
    // Cut square to the spike's axis, at the allowance's width from its tip.
    const tip = cut.filter((s) => s.a.x > 200);
    expect(tip.map((s) => s.a.x)).toEqual([expect.closeTo(208, 9), expect.closeTo(208, 9)]);
    expect(Math.max(...cut.map((s) => distance(s.a, p(200, 10))).filter((d) => d < 100))).toBeLessThan(
      8 * MITRE_LIMIT,
    );
  });

  it('a square end stands square to the first-sewn edge where its seam line meets the other cut line', () => {
    const { corners } = offsetOutline(polygon(wide, [10, 6, 10, 10]), [{ kind: 'square', first: 'before' }]);
    // Q = 6 / sin 60° along the first edge.
    expect(corners[0]!.length).toBe(1);
    const [s] = corners[0]!;
    expect(distance(s!.a, p(100 + 12 / r3, -10))).toBeLessThan(1e-9);
    expect(distance(s!.d, p(100 + 12 / r3, 0))).toBeLessThan(1e-9);
  });

  it('a reflected end is the mirror image of the other cut line in the first-sewn seam line', () => {
    const { corners } = offsetOutline(polygon(wide, [10, 6, 10, 10]), [{ kind: 'reflect', first: 'before' }]);
    const [s] = corners[0]!;
    // From Q outwards at 60°, as the other edge goes inwards at 60°.
    expect(distance(s!.d, p(100 + 12 / r3, 0))).toBeLessThan(1e-9);
    expect(distance(s!.a, p(100 + 12 / r3 + 10 / r3, -10))).toBeLessThan(1e-9);
  });

  it('lies flush when pressed open only if reflected; a mitre is off by twice its lean', () => {
    for (const [shape, cos] of [
      [wide, 0.5],
      [sharp, 0.5],
    ] as const) {
      for (const first of ['before', 'after'] as const) {
        const edges = polygon(shape, 8);
        const of = (kind: 'mitre' | 'square' | 'reflect'): number => {
          const form: CornerForm = kind === 'mitre' ? { kind } : { kind, first };
          return flushError(edges, offsetOutline(edges, [form]), 0, first)!;
        };
        expect(of('reflect')).toBeLessThan(1e-9);
        // Distance of the folded tip from the other cut line: w cos θ square, 2 w cos θ mitred (derived).
        expect(of('square')).toBeCloseTo(8 * cos, 6);
        expect(of('mitre')).toBeCloseTo(16 * cos, 6);
      }
    }
    const right = polygon(square, 8);
    expect(flushError(right, offsetOutline(right, []), 0, 'before')).toBeLessThan(1e-9);
  });

  it('reflected at a curved edge, the end follows the curve and lies flush', () => {
    const outline: Chain = [
      line(p(0, 0), p(80, 20)),
      cubic(p(80, 20), p(60, 60), p(80, 110), p(140, 120)),
      line(p(140, 120), p(130, 250)),
      line(p(130, 250), p(0, 250)),
      line(p(0, 250), p(0, 0)),
    ];
    const edges = outline.map((s, i) => ({ chain: [s], width: [10, 6, 12, 30, 0][i]! }));
    for (const first of ['before', 'after'] as const) {
      const made = offsetOutline(
        edges,
        edges.map((): CornerForm => ({ kind: 'reflect', first })),
      );
      for (let i = 0; i < 5; i++) expect(flushError(edges, made, i, first)).toBeLessThan(1e-6);
      const mitred = offsetOutline(edges, []);
      expect(flushError(edges, mitred, 0, first)).toBeGreaterThan(2);
    }
  });

  it('straight on with equal widths the cut lines just meet; with unequal ones they step', () => {
    const straight: [number, number][] = [
      [0, 0],
      [100, 0],
      [200, 0],
      [200, 200],
      [0, 200],
    ];
    expect(offsetOutline(polygon(straight, 10), []).cut.length).toBe(5);
    expect(offsetOutline(polygon(straight, 10), [{ kind: 'reflect', first: 'before' }]).notes).toEqual([]);
    const { cut, corners, notes } = offsetOutline(polygon(straight, [10, 20, 10, 10, 10]), []);
    expect(corners[0]!.map((s) => [s.a, s.d])).toEqual([[p(100, -10), p(100, -20)]]);
    expect(notes).toEqual([{ kind: 'stepped', edge: 0, at: p(100, 0) }]);
    expect(isSimple(cut)).toBe(true);
    // Asked for, it is no surprise and not noted.
    expect(offsetOutline(polygon(straight, [10, 20, 10, 10, 10]), [{ kind: 'step' }]).notes).toEqual([]);
  });

  it('a step is made by the rule: only where a mitre would shorten one cut line by more than the wider allowance', () => {
    // Turn θ, widths 10 and 20: the mitre shortens the wider by (20 cos θ − 10) / sin θ, which is 20 at 2 cos θ − 1 = 2 sin θ.
    const turned = (degrees: number): OffsetEdge[] => {
      const a = (degrees * Math.PI) / 180;
      const end = p(100 + 150 * Math.cos(a), 150 * Math.sin(a));
      return polygon(
        [
          [0, 0],
          [100, 0],
          [end.x, end.y],
          [end.x - 50, 300],
          [0, 300],
        ],
        [10, 20, 10, 10, 10],
      );
    };
    // 24.3 degrees is the border (derived: 2 cos θ − 2 sin θ = 1, θ = acos(1/√8) − 45°).
    expect(offsetOutline(turned(23.9), []).notes.map((n) => n.kind)).toEqual(['stepped']);
    expect(offsetOutline(turned(24.7), []).notes).toEqual([]);
  });
});

describe('curves', () => {
  it('an edge of many segments stays one chain, smooth joints included', () => {
    const k = 0.5522847498;
    const circle: Segment[] = [
      cubic(p(100, 0), p(100, 100 * k), p(100 * k, 100), p(0, 100)),
      cubic(p(0, 100), p(-100 * k, 100), p(-100, 100 * k), p(-100, 0)),
      cubic(p(-100, 0), p(-100, -100 * k), p(-100 * k, -100), p(0, -100)),
      cubic(p(0, -100), p(100 * k, -100), p(100, -100 * k), p(100, 0)),
    ];
    const { cut, edges } = offsetOutline([{ chain: circle, width: 10 }], []);
    expect(cut.length).toBe(4);
    expect(edges[0]).toEqual(cut);
    // Four cubics stand for a circle to 0.027 % of its radius (read: Bézier circle approximation).
    for (const s of cut)
      for (const t of [0, 0.3, 0.5, 0.9])
        expect(Math.abs(distance(pointAt(s, t), p(0, 0)) - 110)).toBeLessThan(0.03);
  });

  it('a hollow tighter than the allowance gets a corner, and a note', () => {
    const outline: Chain = [
      line(p(0, 0), p(80, 0)),
      cubic(p(80, 0), p(88, 80), p(112, 80), p(120, 0)),
      line(p(120, 0), p(200, 0)),
      line(p(200, 0), p(200, 200)),
      line(p(200, 200), p(0, 200)),
      line(p(0, 200), p(0, 0)),
    ];
    const { cut, notes } = offsetOutline(
      outline.map((s) => ({ chain: [s], width: 15 })),
      [],
    );
    expect(notes.map((n) => [n.kind, n.edge])).toEqual([['tightCurve', 1]]);
    // By symmetry the corner lies on the middle line.
    expect(notes[0]!.at.x).toBeCloseTo(100, 6);
    expect(isSimple(cut)).toBe(true);
  });
});

/** Random pieces: corners round a centre, straight and curved edges, each with a width of its own. */
const pieces: fc.Arbitrary<OffsetEdge[]> = fc
  .array(
    fc.record({
      turn: fc.integer({ min: 0, max: 60 }),
      r: fc.integer({ min: 60, max: 200 }),
      bulge: fc.integer({ min: -15, max: 15 }),
      curved: fc.boolean(),
      width: fc.constantFrom(0, 6, 6.35, 10, 12.7, 15.875, 40),
    }),
    { minLength: 4, maxLength: 10 },
  )
  .map((list) => {
    const at = list.map(({ turn, r }, i) => {
      const a = (2 * Math.PI * (i + turn / 100)) / list.length;
      return p(r * Math.cos(a), r * Math.sin(a));
    });
    return list.map(({ bulge, curved, width }, i) => {
      const a = at[i]!;
      const d = at[(i + 1) % at.length]!;
      const x = d.x - a.x;
      const y = d.y - a.y;
      const k = bulge / 100;
      const s = curved
        ? cubic(
            a,
            p(a.x + x / 3 - y * k, a.y + y / 3 + x * k),
            p(d.x - x / 3 - y * k, d.y - y / 3 + x * k),
            d,
          )
        : line(a, d);
      return { chain: [s], width };
    });
  })
  .filter(
    (edges) => isSimple(edges.flatMap((e) => e.chain)) && signedArea(edges.flatMap((e) => e.chain)) > 1000,
  );

const forms: fc.Arbitrary<CornerForm[]> = fc.array(
  fc.constantFrom<CornerForm>(
    { kind: 'mitre' },
    { kind: 'step' },
    { kind: 'square', first: 'before' },
    { kind: 'square', first: 'after' },
    { kind: 'reflect', first: 'before' },
    { kind: 'reflect', first: 'after' },
  ),
  { minLength: 10, maxLength: 10 },
);

/** The edge run on past both ends along its tangents. */
function supporting(e: OffsetEdge): Chain {
  const a = chainStart(e.chain);
  const d = chainEnd(e.chain);
  const t = tangentAt(e.chain[0]!, 0);
  const u = tangentAt(e.chain[e.chain.length - 1]!, 1);
  return [
    line(p(a.x - 500 * t.x, a.y - 500 * t.y), a),
    ...e.chain,
    line(d, p(d.x + 500 * u.x, d.y + 500 * u.y)),
  ];
}

/** Whether the edge is hollow with a radius below its width somewhere. */
function tight(e: OffsetEdge): boolean {
  return e.chain.some((s) => {
    if (s.kind === 'line') return false;
    return Array.from({ length: 101 }, (_, i) => i / 100).some((t) => {
      const v = derivativeAt(s, t);
      const a = p(s.a.x - 2 * s.b.x + s.c.x, s.a.y - 2 * s.b.y + s.c.y);
      const d = p(s.b.x - 2 * s.c.x + s.d.x, s.b.y - 2 * s.c.y + s.d.y);
      const bend = p(6 * (a.x + (d.x - a.x) * t), 6 * (a.y + (d.y - a.y) * t));
      const speed = Math.sqrt(v.x * v.x + v.y * v.y);
      return 1 + (e.width * (v.x * bend.y - v.y * bend.x)) / (speed * speed * speed) < 0;
    });
  });
}

/** Both chains have the same joints, in order up to the starting point, to `tolerance`. */
function expectSame(c: Chain, k: Chain, tolerance: number): void {
  expect(c.length).toBe(k.length);
  const n = c.length;
  let off = 0;
  for (let i = 1; i < n; i++) if (distance(k[i]!.a, c[0]!.a) < distance(k[off]!.a, c[0]!.a)) off = i;
  for (let i = 0; i < n; i++) {
    const s = c[i]!;
    const u = k[(i + off) % n]!;
    expect(distance(s.a, u.a)).toBeLessThan(tolerance);
    expect(distance(pointAt(s, 0.5), pointAt(u, 0.5))).toBeLessThan(tolerance);
  }
}

describe('properties over random pieces, widths and corner forms', () => {
  it('the cut line is closed, simple, and made up of its edges and corners', () => {
    fc.assert(
      fc.property(pieces, forms, (edges, corners) => {
        const made = offsetOutline(edges, corners);
        made.cut.forEach((s, i) =>
          expect(s.a).toBe(made.cut[(i + made.cut.length - 1) % made.cut.length]!.d),
        );
        expect(isSimple(made.cut)).toBe(true);
        expect(made.edges.flatMap((e, i) => [...e, ...made.corners[i]!])).toEqual(made.cut);
      }),
      { numRuns: 1000, seed: 5 },
    );
  });

  it('every point of an edge’s cut line is its width from the edge', () => {
    fc.assert(
      fc.property(pieces, forms, (edges, corners) => {
        const made = offsetOutline(edges, corners);
        made.edges.forEach((chain, i) => {
          const seam = supporting(edges[i]!);
          for (const s of chain) {
            for (let k = 0; k <= 10; k++) {
              const d = nearestOnChain(seam, pointAt(s, k / 10)).distance;
              expect(d - edges[i]!.width).toBeLessThanOrEqual(0.03);
              // Past its cusps a parallel comes nearer to other parts of a hollow edge than to its own.
              if (!tight(edges[i]!)) expect(edges[i]!.width - d).toBeLessThanOrEqual(0.03);
            }
          }
        });
      }),
      { numRuns: 500, seed: 6 },
    );
  });

  it('a moved and turned outline gives the moved and turned cut line', () => {
    fc.assert(
      fc.property(pieces, forms, motions, (edges, corners, m) => {
        const moved = edges.map((e) => ({ ...e, chain: transformChain(e.chain, m) }));
        // The outline must stay closed to the last bit.
        const closed = moved.map((e, i) => ({
          ...e,
          chain: e.chain.map((s) => ({ ...s, d: moved[(i + 1) % moved.length]!.chain[0]!.a })),
        }));
        expectSame(
          transformChain(offsetOutline(edges, corners).cut, m),
          offsetOutline(closed, corners).cut,
          1e-9,
        );
      }),
      { numRuns: 500, seed: 7 },
    );
  });

  it('it does not matter at which edge the outline starts', () => {
    fc.assert(
      fc.property(pieces, forms, fc.nat(9), (edges, corners, start) => {
        const n = edges.length;
        const turn = <T>(list: readonly T[]): T[] => edges.map((_, i) => list[(i + start) % n]!);
        const made = offsetOutline(edges, corners);
        const again = offsetOutline(turn(edges), turn(corners));
        expectSame(made.cut, again.cut, 1e-9);
        const lengths = (list: readonly Chain[]): number[] => list.map((c) => c.length);
        expect(lengths(again.edges)).toEqual(lengths(turn(made.edges)));
      }),
      { numRuns: 300, seed: 8 },
    );
  });

  it('nor which way round the outline is given', () => {
    fc.assert(
      fc.property(pieces, forms, (edges, corners) => {
        const n = edges.length;
        const back = edges.map((_, k) => ({
          ...edges[n - 1 - k]!,
          chain: reverseChain(edges[n - 1 - k]!.chain),
        }));
        const swap = (f: CornerForm): CornerForm =>
          'first' in f ? { ...f, first: f.first === 'before' ? 'after' : 'before' } : f;
        const swapped = edges.map((_, k) => swap(corners[(2 * n - 2 - k) % n]!));
        const made = offsetOutline(edges, corners);
        const again = offsetOutline(back, swapped);
        expectSame(made.cut, reverseChain(again.cut), 1e-9);
        expect(again.corners.map((c) => c.length)).toEqual(
          edges.map((_, k) => made.corners[(2 * n - 2 - k) % n]!.length),
        );
      }),
      { numRuns: 300, seed: 9 },
    );
  });

  it('the mirror image of an outline gives the mirror image of its cut line', () => {
    fc.assert(
      fc.property(pieces, angles, (edges, angle) => {
        const m = compose(
          reflectionAcross(p(0, 0), p(Math.cos(angle), Math.sin(angle))),
          reflectionAcross(p(0, 0), p(1, 0)),
        );
        const mirror = compose(m, reflectionAcross(p(0, 0), p(0, 1)));
        const image = edges.map((e) => ({ ...e, chain: transformChain(e.chain, mirror) }));
        const closed = image.map((e, i) => ({
          ...e,
          chain: e.chain.map((s) => ({ ...s, d: image[(i + 1) % image.length]!.chain[0]!.a })),
        }));
        expectSame(transformChain(offsetOutline(edges, []).cut, mirror), offsetOutline(closed, []).cut, 1e-9);
      }),
      { numRuns: 200, seed: 10 },
    );
  });
});
