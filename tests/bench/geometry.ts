import { Bezier } from 'bezier-js';
import { Intersection, ShapeInfo } from 'kld-intersections';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import DiscreteHausdorffDistance from 'jsts/org/locationtech/jts/algorithm/distance/DiscreteHausdorffDistance.js';
import IsSimpleOp from 'jsts/org/locationtech/jts/operation/IsSimpleOp.js';
import type { Chain, Cubic, Point } from '../../src/lib/geometry/types.ts';
import { cubic, line } from '../../src/lib/geometry/segment.ts';
import { segmentLength } from '../../src/lib/geometry/length.ts';
import { chainLength, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { polyline } from '../../src/lib/geometry/polyline.ts';
import { transformChain } from '../../src/lib/geometry/chain-moved.ts';
import { intersectSegments } from '../../src/lib/geometry/intersect.ts';
import { discreteFrechet, hausdorff } from '../../src/lib/geometry/distance.ts';
import { isSimple } from '../../src/lib/geometry/outline.ts';
import { compose, rotationByAngle, translation } from '../../src/lib/geometry/isometry.ts';
import { interleaved, type BenchOptions, type BenchRow } from './harness.ts';

const p = (x: number, y: number): Point => ({ x, y });

/** Twelve edges, seven lines and five cubics, about 250 × 450 mm, with a notch 30 wide and 150 deep. */
export const piece: Chain = [
  line(p(0, 60), p(0, 450)),
  line(p(0, 450), p(-90, 450)),
  line(p(-90, 450), p(-105, 300)),
  line(p(-105, 300), p(-120, 450)),
  cubic(p(-120, 450), p(-150, 452), p(-190, 446), p(-225, 438)),
  line(p(-225, 438), p(-240, 330)),
  cubic(p(-240, 330), p(-246, 290), p(-249, 250), p(-250, 215)),
  cubic(p(-250, 215), p(-225, 210), p(-190, 195), p(-180, 150)),
  cubic(p(-180, 150), p(-172, 112), p(-176, 70), p(-184, 30)),
  line(p(-184, 30), p(-75, 0)),
  cubic(p(-75, 0), p(-70, 38), p(-40, 60), p(0, 60)),
].flatMap((s, i): Chain => (i === 0 ? [line(p(0, 60), p(0, 250)), line(p(0, 250), p(0, 450))] : [s]));

/** Deterministic numbers in [0, 1) for drawing curves. */
function dice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return state / 2147483648;
  };
}

/** Curves as a shaky hand draws them: controls within 40 mm of the thirds, whatever the length. */
function curves(count: number, seed: number): Cubic[] {
  const roll = dice(seed);
  return Array.from({ length: count }, () => {
    const a = p(200 * roll(), 200 * roll());
    const d = p(200 * roll(), 200 * roll());
    const off = (f: number): Point =>
      p(a.x + (d.x - a.x) * f + 80 * (roll() - 0.5), a.y + (d.y - a.y) * f + 80 * (roll() - 0.5));
    return cubic(a, off(1 / 3), off(2 / 3), d);
  });
}

/** The rows of the table of ratios that are pure geometry, and a few times of our own. */
export async function geometryBench(options: BenchOptions = {}): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  const factory = new GeometryFactory();
  const flattened = (c: Chain, tolerance: number): unknown =>
    factory.createLineString(polyline(c, tolerance).map(({ x, y }) => new Coordinate(x, y)));

  // Both get every curve in turn; bezier-js gets its objects ready made, and keeps no length in them.
  const edges = piece.filter((s): s is Cubic => s.kind === 'cubic');
  const roll = dice(3);
  const near = (q: Point): Point => p(q.x + 16 * (roll() - 0.5), q.y + 16 * (roll() - 0.5));
  const alike = Array.from({ length: 256 }, (_, i) => edges[i % edges.length]!).map((s) =>
    cubic(near(s.a), near(s.b), near(s.c), near(s.d)),
  );
  const built = (list: readonly Cubic[]): Bezier[] =>
    list.map((s) => new Bezier([s.a, s.b, s.c, s.d].map(({ x, y }) => ({ x, y }))));
  const alikeBuilt = built(alike);
  rows.push({
    name: 'arc length, curves like the edges of a piece',
    against: 'bezier-js length(), object built',
    goal: 1 / 3,
    ...interleaved(
      (i) => segmentLength(alike[i & 255]!),
      (i) => alikeBuilt[i & 255]!.length(),
      { iterations: 20000, ...options },
    ),
  });

  // Curves as a shaky hand draws them, some nearly folded: bezier-js takes 24 nodes all the same and is wrong there.
  const drawn = curves(256, 1);
  const drawnBuilt = built(drawn);
  rows.push({
    name: 'arc length, shaky curves (no goal set)',
    against: 'bezier-js length(), object built, not exact here',
    goal: 1,
    ...interleaved(
      (i) => segmentLength(drawn[i & 255]!),
      (i) => drawnBuilt[i & 255]!.length(),
      { iterations: 20000, ...options },
    ),
  });

  const others = curves(256, 2);
  const [mine, their] = [drawn, others].map((list) =>
    list.map((s) => ShapeInfo.cubicBezier(s.a.x, s.a.y, s.b.x, s.b.y, s.c.x, s.c.y, s.d.x, s.d.y)),
  );
  rows.push({
    name: 'cubic × cubic',
    against: 'kld-intersections, shapes built',
    goal: 1 / 3,
    ...interleaved(
      (i) => intersectSegments(drawn[i & 255]!, others[i & 255]!).length,
      (i) => Intersection.intersect(mine![i & 255]!, their![i & 255]!).points.length,
      { iterations: 2000, ...options },
    ),
  });

  // Matched edges: the same five curves, drawn a little differently. jsts measures points only: flattened to 0.005 mm it is
  // still up to 0.003 mm off, where ours is within 1e-6 mm.
  const matched = edges.map((s): Chain => [s]);
  const shaken = edges.map((s): Chain => [cubic(s.a, p(s.b.x + 2, s.b.y - 1), p(s.c.x - 1, s.c.y + 2), s.d)]);
  const flat = matched.map((c) => flattened(c, 0.005));
  const flatShaken = shaken.map((c) => flattened(c, 0.005));
  rows.push({
    name: 'Hausdorff, matched edges',
    against: 'jsts DiscreteHausdorffDistance, flattened to 0.005 mm',
    goal: 1 / 10,
    ...interleaved(
      (i) => hausdorff(matched[i % 5]!, shaken[i % 5]!),
      (i) => DiscreteHausdorffDistance.distance(flat[i % 5], flatShaken[i % 5]),
      { iterations: 500, ...options },
    ),
  });

  // The piece turned a little differently each time, so that nothing can be remembered.
  const turned = Array.from({ length: 16 }, (_, i) =>
    transformChain(piece, compose(translation(p(i, 2 * i)), rotationByAngle(p(0, 0), 0.1 * i))),
  );
  const flatTurned = turned.map((c) => flattened(c, 0.05));
  rows.push({
    name: 'validity, 12-edge piece',
    against: 'jsts IsSimple, flattened to 0.05 mm',
    goal: 1 / 4,
    ...interleaved(
      (i) => (isSimple(turned[i & 15]!) ? 1 : 0),
      (i) => (new IsSimpleOp(flatTurned[i & 15]).isSimple() ? 1 : 0),
      { iterations: 500, ...options },
    ),
  });
  return rows;
}

/** Times of single operations, µs, without anything to compare with. */
export function geometryTimes(): { readonly name: string; readonly us: number }[] {
  const nothing = (): number => 0;
  const time = (
    name: string,
    operation: (i: number) => number,
    iterations: number,
  ): { name: string; us: number } => ({
    name,
    us: interleaved(operation, nothing, { iterations }).ours_us,
  });
  const whole = chainLength(piece);
  const a = polyline(piece, 0.05);
  const row = (n: number): Point[] =>
    Array.from({ length: n }, (_, i) => pointAtLength(piece, (whole * i) / n));
  const [r, q] = [row(200), row(199)];
  return [
    { name: 'points of the piece flattened to 0.05 mm', us: a.length },
    time('length of a 12-edge outline', () => chainLength(piece), 5000),
    time('point at length on it', (i) => pointAtLength(piece, (whole * (i % 997)) / 997).x, 5000),
    time('discrete Fréchet, 200 × 199 points', () => discreteFrechet(r, q), 100),
  ];
}

async function main(): Promise<void> {
  console.table(
    (await geometryBench()).map(({ ours_us, theirs_us, ratio, goal, ...rest }) => ({
      ...rest,
      ours_us: +ours_us.toFixed(3),
      theirs_us: +theirs_us.toFixed(3),
      ratio: +ratio.toFixed(4),
      goal: +goal.toFixed(3),
    })),
  );
  console.table(geometryTimes());
}

if (process.argv[1]?.endsWith('bench/geometry.ts')) void main();
