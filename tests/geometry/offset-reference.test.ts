import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { offsetOutline, type CornerForm, type OffsetEdge } from '../../src/lib/geometry/offset.ts';
import { polyline } from '../../src/lib/geometry/polyline.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { isSimple } from '../../src/lib/geometry/intersect.ts';
import { cubic, line } from '../../src/lib/geometry/segment.ts';

/*
 * Outside check (derived): fixed references, made once with mpmath from the definitions of parallel and corner forms, and with
 * GEOS; see data/offset-reference.py.txt. Tolerance 0.03 mm everywhere, corners included: the accuracy the cut line is promised
 * to have, a tenth of a pencil line.
 */
const TOLERANCE = 0.03;

type Pair = [number, number];
interface Shape {
  name: string;
  edges: { points: Pair[]; width: number }[];
  ring: Pair[];
}
interface Exact extends Shape {
  corners: [string, ('before' | 'after')?][];
  joints: Pair[];
}
const file = new URL('./data/offset-reference.json', import.meta.url);
const data = JSON.parse(readFileSync(file, 'utf8')) as { exact: Exact[]; geos: Shape[] };

const point = ([x, y]: Pair): Point => ({ x, y });

function edgesOf(shape: Shape): OffsetEdge[] {
  return shape.edges.map(({ points, width }) => {
    const [a, b, c, d] = points.map(point);
    return { chain: [points.length === 2 ? line(a!, b!) : cubic(a!, b!, c!, d!)], width };
  });
}

/** Farthest the points lie from the closed polygon through `ring`. */
function fromRing(points: readonly Point[], ring: readonly Pair[]): number {
  const sides: Chain = ring.map((p, i) => line(point(p), point(ring[(i + 1) % ring.length]!)));
  return Math.max(...points.map((p) => nearestOnChain(sides, p).distance));
}

const fromChain = (ring: readonly Pair[], cut: Chain): number =>
  Math.max(...ring.map((p) => nearestOnChain(cut, point(p)).distance));

describe.each(data.exact)('mpmath: $name', (shape) => {
  const forms = shape.corners.map(([kind, first]): CornerForm => ({ kind, first }) as CornerForm);
  const edges = edgesOf(shape);
  const made = offsetOutline(edges, forms);

  it('the cut line lies on the reference, and the reference on the cut line', () => {
    expect(fromChain(shape.ring, made.cut)).toBeLessThanOrEqual(TOLERANCE);
    expect(fromRing(polyline(made.cut, 0.005), shape.ring)).toBeLessThanOrEqual(TOLERANCE);
  });

  it('every corner point of the reference is a joint of the cut line', () => {
    for (const p of shape.joints) {
      const nearest = Math.min(...made.cut.map((s) => distance(s.a, point(p))));
      expect(nearest, `joint at ${p.join(', ')}`).toBeLessThanOrEqual(TOLERANCE);
    }
  });

  it('is one closed line without crossings and keeps every edge', () => {
    expect(isSimple(made.cut)).toBe(true);
    expect(made.edges.every((e) => e.length > 0)).toBe(true);
    expect(made.notes).toEqual([]);
  });
});

describe.each(data.geos)('GEOS: $name', (shape) => {
  it('the cut line lies on the buffer, and the buffer on the cut line', () => {
    const { cut } = offsetOutline(edgesOf(shape), []);
    expect(fromChain(shape.ring, cut)).toBeLessThanOrEqual(TOLERANCE);
    expect(fromRing(polyline(cut, 0.005), shape.ring)).toBeLessThanOrEqual(TOLERANCE);
    expect(isSimple(cut)).toBe(true);
  });
});
