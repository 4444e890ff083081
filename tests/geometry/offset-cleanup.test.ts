import { describe, expect, it } from 'vitest';
import { area, FillRule, union } from 'clipper2-ts';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { offsetOutline } from '../../src/lib/geometry/offset.ts';
import { signedArea } from '../../src/lib/geometry/outline.ts';
import { isSimple } from '../../src/lib/geometry/intersect.ts';
import { polyline } from '../../src/lib/geometry/polyline.ts';
import { cubic, line, pointAt, derivativeAt } from '../../src/lib/geometry/segment.ts';

/*
 * Outside check (derived): clipper2-ts's union (fill rule "positive") of the raw parallel. The raw parallel is made here, from exact
 * normals at dense samples and nothing of the code under test: outward corners as mitres, inward ones through the corner.
 */

/** Numbers in [0, 1) from a seed (Park & Miller's minimal standard generator). */
function generator(seed: number): () => number {
  let state = (seed * 7919 + 12345) % 2147483647;
  const next = (): number => (state = (state * 48271) % 2147483647) / 2147483647;
  next();
  next();
  return next;
}

const STEPS = 160;

/** The raw parallel of an outline of smooth or straight segments as a polygon; corners mitred without limit. */
function rawParallel(outline: Chain, w: number): Point[] {
  const out: Point[] = [];
  const n = outline.length;
  for (let i = 0; i < n; i++) {
    const s = outline[i]!;
    const steps = s.kind === 'line' ? 1 : STEPS;
    const unit = (t: number): Point => {
      const v = derivativeAt(s, t);
      const k = Math.sqrt(v.x * v.x + v.y * v.y);
      return { x: v.x / k, y: v.y / k };
    };
    const at = (t: number): { t: number; u: Point; p: Point } => {
      const p = pointAt(s, t);
      const u = unit(t);
      return { t, u, p: { x: p.x + w * u.y, y: p.y - w * u.x } };
    };
    let from = at(0);
    out.push(from.p);
    // Closer where the curve turns fast, so that chords stay within some microns of the parallel.
    const refine = (b: { t: number; u: Point; p: Point }, depth: number): void => {
      if (depth > 0 && Math.abs(from.u.x * b.u.y - from.u.y * b.u.x) > 0.02) {
        refine(at(0.5 * (from.t + b.t)), depth - 1);
        refine(b, depth - 1);
      } else {
        from = b;
        out.push(b.p);
      }
    };
    for (let k = 1; k <= steps; k++) refine(at(k / steps), 8);
    const next = outline[(i + 1) % n]!;
    const v = derivativeAt(next, 0);
    const size = Math.sqrt(v.x * v.x + v.y * v.y);
    const u = { x: v.x / size, y: v.y / size };
    const t = unit(1);
    const sin = t.x * u.y - t.y * u.x;
    const cos = t.x * u.x + t.y * u.y;
    if (sin > 1e-6)
      out.push({ x: s.d.x + (w * (t.y + u.y)) / (1 + cos), y: s.d.y - (w * (t.x + u.x)) / (1 + cos) });
    else if (sin < -1e-6) out.push(s.d);
  }
  return out;
}

const SCALE = 1e5;

/** The largest outline of clipper2's union. */
function unionOf(raw: readonly Point[]): Point[] {
  const path = raw.map((p) => ({ x: Math.round(p.x * SCALE), y: Math.round(p.y * SCALE) }));
  let best: { x: number; y: number }[] = [];
  for (const p of union([path], FillRule.Positive)) if (area(p) > area(best)) best = p;
  return best.map((p) => ({ x: p.x / SCALE, y: p.y / SCALE }));
}

/** Farthest any of `points` lies from the closed polygon, mm. */
function farthest(points: readonly Point[], polygon: readonly Point[]): number {
  let most = 0;
  for (const p of points) {
    let least = Infinity;
    for (let i = 0; i < polygon.length; i++) {
      const a = polygon[i]!;
      const d = polygon[(i + 1) % polygon.length]!;
      const ux = d.x - a.x;
      const uy = d.y - a.y;
      const l2 = ux * ux + uy * uy;
      const k = l2 > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * ux + (p.y - a.y) * uy) / l2)) : 0;
      const x = p.x - a.x - k * ux;
      const y = p.y - a.y - k * uy;
      least = Math.min(least, x * x + y * y);
    }
    most = Math.max(most, least);
  }
  return Math.sqrt(most);
}

/** A closed smooth curve through points round a centre, with hollows that are often tighter than the allowance. */
function blob(random: () => number): Chain {
  const n = 6 + Math.floor(random() * 7);
  const tight = 0.4 + 0.5 * random();
  const points: Point[] = [];
  for (let i = 0; i < n; i++) {
    const angle = (2 * Math.PI * (i + 0.3 * random())) / n;
    const r = 150 * (1 - tight * random());
    points.push({ x: r * Math.cos(angle), y: r * Math.sin(angle) });
  }
  const k = 0.06 + 0.11 * random();
  return points.map((p, i) => {
    const at = (k: number): Point => points[(k + n) % n]!;
    const d = at(i + 1);
    return cubic(
      p,
      { x: p.x + k * (d.x - at(i - 1).x), y: p.y + k * (d.y - at(i - 1).y) },
      { x: d.x - k * (at(i + 2).x - p.x), y: d.y - k * (at(i + 2).y - p.y) },
      d,
    );
  });
}

/** A polygon round a centre with sharp spikes and notches. */
function spiky(random: () => number): Chain {
  const n = 5 + Math.floor(random() * 9);
  const points: Point[] = [];
  for (let i = 0; i < n; i++) {
    const angle = (2 * Math.PI * (i + 0.6 * random())) / n;
    const r = 20 + 150 * random();
    points.push({ x: r * Math.cos(angle), y: r * Math.sin(angle) });
  }
  return points.map((p, i) => line(p, points[(i + 1) % n]!));
}

/** Whether a mitre would be squared off somewhere. */
function tooSharp(outline: Chain): boolean {
  return outline.some((s, i) => {
    const v = derivativeAt(s, 1);
    const u = derivativeAt(outline[(i + 1) % outline.length]!, 0);
    const cos = (v.x * u.x + v.y * u.y) / Math.sqrt((v.x * v.x + v.y * v.y) * (u.x * u.x + u.y * u.y));
    return v.x * u.y - v.y * u.x > 0 && cos < -0.85;
  });
}

/** Straight and curved sides in turn, corners of all kinds. */
function mixed(random: () => number): Chain {
  const sides = spiky(random);
  return sides.map((s) => {
    if (s.kind !== 'line' || random() < 0.5) return s;
    const bulge = 0.35 * (random() - 0.5);
    const x = s.d.x - s.a.x;
    const y = s.d.y - s.a.y;
    return cubic(
      s.a,
      { x: s.a.x + x / 3 - y * bulge, y: s.a.y + y / 3 + x * bulge },
      { x: s.d.x - x / 3 - y * bulge, y: s.d.y - y / 3 + x * bulge },
      s.d,
    );
  });
}

function compare(
  outline: Chain,
  w: number,
  asEdges: boolean,
): { area: number; far: number; simple: boolean; hard: boolean } {
  const edges = asEdges ? outline.map((s) => ({ chain: [s], width: w })) : [{ chain: outline, width: w }];
  const made = offsetOutline(edges, []);
  const raw = rawParallel(outline, w);
  const reference = unionOf(raw);
  const ours = polyline(made.cut, 0.01);
  const length = reference.reduce((sum, p, i) => {
    const q = reference[(i + 1) % reference.length]!;
    return sum + Math.sqrt((p.x - q.x) ** 2 + (p.y - q.y) ** 2);
  }, 0);
  // All joints of the cut line, and a share of what lies between.
  const thin = [...made.cut.map((s) => s.d), ...ours.filter((_, i) => ours.length < 150 || i % 4 === 0)];
  return {
    area: Math.abs(area(reference) - signedArea(made.cut)) / length,
    far: Math.max(
      farthest(thin, reference),
      farthest(
        reference.filter((_, i) => reference.length < 150 || i % 9 === 0),
        ours,
      ),
    ),
    simple: isSimple(made.cut),
    hard: Math.abs(Math.abs(area(raw)) - Math.abs(area(reference))) > 0.1,
  };
}

/** Compares outlines until `cases` of them had something to clean up. */
function sweep(cases: number, from: number, make: (random: () => number) => Chain, asEdges: boolean): void {
  let hard = 0;
  for (let seed = from; hard < cases; seed++) {
    const random = generator(seed);
    const outline = make(random);
    const w = 3 + 25 * random();
    if (tooSharp(outline) || signedArea(outline) < 100) continue;
    // Only outlines that do not cross themselves are seam lines.
    const whole = unionOf(outline.flatMap((s) => polyline([s], 0.01).slice(0, -1)));
    if (Math.abs(area(whole) - signedArea(outline)) > 2) continue;
    const c = compare(outline, w, asEdges);
    if (c.hard) hard++;
    expect(c.far, `seed ${seed}: distance`).toBeLessThanOrEqual(0.03);
    expect(c.area, `seed ${seed}: area over length`).toBeLessThanOrEqual(0.005);
    expect(c.simple, `seed ${seed}: simple`).toBe(true);
  }
}

describe('the clean-up keeps what clipper2 keeps in its union', () => {
  it('on 350 smooth outlines with hollows tighter than the allowance', () => {
    sweep(350, 1, blob, false);
  }, 120_000);

  it('on 350 outlines of straight edges with spikes and notches', () => {
    sweep(350, 10_000, spiky, true);
  }, 120_000);

  it('on 350 outlines of straight and curved edges', () => {
    sweep(350, 20_000, mixed, true);
  }, 120_000);
});
