import type { Segment } from '../../../src/lib/geometry/types.ts';
import type { Part } from '../../../src/lib/pattern/types.ts';

/** A point of a segment by de Casteljau's halving generalised; the app's own curve code is left out on purpose. */
function along(s: Segment, t: number): [number, number] {
  const mix = (p: [number, number], q: [number, number]): [number, number] => [
    p[0] + (q[0] - p[0]) * t,
    p[1] + (q[1] - p[1]) * t,
  ];
  let points: [number, number][] =
    s.kind === 'line'
      ? [
          [s.a.x, s.a.y],
          [s.d.x, s.d.y],
        ]
      : [s.a, s.b, s.c, s.d].map(({ x, y }) => [x, y]);
  while (points.length > 1) points = points.slice(1).map((p, i) => mix(points[i]!, p));
  return points[0]!;
}

/** Area of sheets by the shoelace formula on many points, mm². */
export function flatten(parts: readonly Part[]): number {
  let sum = 0;
  for (const { edges } of parts) {
    const points = edges
      .flatMap(({ chain }) => chain)
      .flatMap((s) => Array.from({ length: 400 }, (_, i) => along(s, i / 400)));
    points.forEach(([x, y], i) => {
      const [u, v] = points[(i + 1) % points.length]!;
      sum += (x * v - u * y) / 2;
    });
  }
  return Math.abs(sum);
}
