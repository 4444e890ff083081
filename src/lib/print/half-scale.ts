import { chainBounds } from '../geometry/chain.ts';
import { polyline } from '../geometry/polyline.ts';
import type { Box, Chain, Point } from '../geometry/types.ts';
import { num } from './svg.ts';

/** The sheet shows half of the full size; the pieces themselves are never kept in any other size than full. */
export const SCALE = 0.5;

/** Takes a point of a piece (mm, full size) to the sheet (mm on paper). */
export type ToPaper = (p: Point) => Point;

/** Half scale, with the full-size point `corner` at x, y on paper. */
export const toPaper =
  (corner: Point, x: number, y: number): ToPaper =>
  (p) => ({ x: x + (p.x - corner.x) * SCALE, y: y + (p.y - corner.y) * SCALE });

const pair = (p: Point): string => `${num(p.x)} ${num(p.y)}`;

/** The `d` of an SVG path: exact cubics, absolute, mm on paper. */
export function pathData(chain: Chain, paper: ToPaper, closed: boolean): string {
  const first = chain[0];
  if (!first) return '';
  const steps = chain.map((s) =>
    s.kind === 'line'
      ? `L${pair(paper(s.d))}`
      : `C${pair(paper(s.b))} ${pair(paper(s.c))} ${pair(paper(s.d))}`,
  );
  return `M${pair(paper(first.a))}${steps.join('')}${closed ? 'Z' : ''}`;
}

/** The smallest upright box around all chains, mm full size. */
export function boundsOf(chains: readonly Chain[]): Box {
  const boxes = chains.filter((chain) => chain.length > 0).map(chainBounds);
  return {
    minX: Math.min(...boxes.map((box) => box.minX)),
    minY: Math.min(...boxes.map((box) => box.minY)),
    maxX: Math.max(...boxes.map((box) => box.maxX)),
    maxY: Math.max(...boxes.map((box) => box.maxY)),
  };
}

const APART = 4;

/** Points along a chain, none farther than `APART` mm from the next: what a caption has to keep clear of. */
export function obstacles(chain: Chain): Point[] {
  const points = polyline(chain, 0.5);
  return points.flatMap((p, i) => {
    const q = points[i + 1] ?? p;
    const dx = q.x - p.x;
    const dy = q.y - p.y;
    const n = Math.max(1, Math.ceil(Math.sqrt(dx * dx + dy * dy) / APART));
    return Array.from({ length: n }, (_, k) => ({ x: p.x + (dx * k) / n, y: p.y + (dy * k) / n }));
  });
}
