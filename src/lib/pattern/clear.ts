import type { Box, Chain, Segment } from '../geometry/types.ts';

/** Whether the box of a segment's control points keeps clear of `box` by more than `reach` mm: then they cannot meet. */
export function clearOf(s: Segment, box: Box, reach: number): boolean {
  const { a, d } = s;
  if (s.kind === 'line') {
    return (
      (a.x < box.minX - reach && d.x < box.minX - reach) ||
      (a.x > box.maxX + reach && d.x > box.maxX + reach) ||
      (a.y < box.minY - reach && d.y < box.minY - reach) ||
      (a.y > box.maxY + reach && d.y > box.maxY + reach)
    );
  }
  const { b, c } = s;
  const west = box.minX - reach;
  const east = box.maxX + reach;
  const north = box.minY - reach;
  const south = box.maxY + reach;
  return (
    (a.x < west && b.x < west && c.x < west && d.x < west) ||
    (a.x > east && b.x > east && c.x > east && d.x > east) ||
    (a.y < north && b.y < north && c.y < north && d.y < north) ||
    (a.y > south && b.y > south && c.y > south && d.y > south)
  );
}

/** Whether every segment of a chain keeps clear of `box` by more than `reach` mm. */
export function allClear(chain: Chain, box: Box, reach: number): boolean {
  for (const s of chain) if (!clearOf(s, box, reach)) return false;
  return true;
}
