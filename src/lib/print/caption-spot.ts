import { contains } from '../geometry/outline.ts';
import { chainBounds } from '../geometry/chain.ts';
import type { Chain, Point } from '../geometry/types.ts';
import { obstacles } from './half-scale.ts';
import type { Size } from './pack.ts';

const GRID = 32;

/**
 * The middle of the place inside a closed outline where a box of that size has most room, `others` (a grainline, say) kept
 * clear of as well; undefined where it fits nowhere. All in one unit.
 */
export function captionSpot(outline: Chain, box: Size, others: readonly Chain[]): Point | undefined {
  const lines = [outline, ...others].flatMap(obstacles);
  const bounds = chainBounds(outline);
  let best: Point | undefined;
  let most = 1;
  for (let i = 1; i < GRID; i++) {
    for (let j = 1; j < GRID; j++) {
      const x = bounds.minX + ((bounds.maxX - bounds.minX) * i) / GRID;
      const y = bounds.minY + ((bounds.maxY - bounds.minY) * j) / GRID;
      // How much larger the box could be, about this middle, before it met a line.
      const room = Math.min(
        ...lines.map((p) =>
          Math.max(Math.abs(p.x - x) / (box.width / 2), Math.abs(p.y - y) / (box.height / 2)),
        ),
      );
      if (room > most && contains(outline, { x, y }) === 'inside') {
        most = room;
        best = { x, y };
      }
    }
  }
  return best;
}
