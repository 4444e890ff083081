import type { Point, Segment } from './types.ts';
import type { OffsetEdge } from './offset-types.ts';
import { tangentAt } from './segment.ts';
import { fitParallel } from './fit-offset.ts';

/** The parallel of one seam segment, before it is joined to its neighbours. */
export interface Run {
  /** Index of its edge, and whether the joint after it is a corner between edges. */
  readonly edge: number;
  corner: boolean;
  readonly straight: boolean;
  readonly width: number;
  readonly segments: readonly Segment[];
  readonly cusped: boolean;
  /** Seam points and unit tangents of travel at both ends. */
  readonly from: Point;
  readonly to: Point;
  readonly leaving: Point;
  readonly arriving: Point;
}

/** The parallels of all seam segments in outline order; segments of no length are left out. */
export function runsOf(edges: readonly OffsetEdge[]): Run[] {
  const runs: Run[] = [];
  for (let edge = 0; edge < edges.length; edge++) {
    const { chain, width } = edges[edge]!;
    for (const s of chain) {
      const { a, d } = s;
      if (s.kind === 'line') {
        const x = d.x - a.x;
        const y = d.y - a.y;
        const n = Math.sqrt(x * x + y * y);
        if (n === 0) continue;
        const t = { x: x / n, y: y / n };
        const shift = { x: width * t.y, y: -width * t.x };
        const moved: Segment =
          width === 0
            ? s
            : {
                kind: 'line',
                a: { x: a.x + shift.x, y: a.y + shift.y },
                d: { x: d.x + shift.x, y: d.y + shift.y },
              };
        runs.push({
          edge,
          corner: false,
          straight: true,
          width,
          segments: [moved],
          cusped: false,
          from: a,
          to: d,
          leaving: t,
          arriving: t,
        });
      } else {
        const { b, c } = s;
        if (a.x === d.x && a.y === d.y && a.x === b.x && a.y === b.y && a.x === c.x && a.y === c.y) continue;
        const parallel = width === 0 ? { segments: [s], cusped: false } : fitParallel(s, width);
        runs.push({
          edge,
          corner: false,
          straight: false,
          width,
          segments: parallel.segments,
          cusped: parallel.cusped,
          from: a,
          to: d,
          leaving: tangentAt(s, 0),
          arriving: tangentAt(s, 1),
        });
      }
    }
    if (runs.length > 0) runs[runs.length - 1]!.corner = true;
  }
  return runs;
}
