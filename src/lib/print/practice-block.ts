import { line } from '../geometry/segment.ts';
import type { Chain, Point } from '../geometry/types.ts';
import { landmark, outlineOf } from '../pattern/outline.ts';
import type { Piece } from '../pattern/types.ts';
import type { Block } from './block.ts';
import { boundsOf, pathData, SCALE, toPaper } from './half-scale.ts';
import { escapeText, textAt } from './svg.ts';

const TEXT = 3.2;
/** Half the length of a stroke of the bust point's cross, and the length of an arrow head, mm on paper. */
const CROSS = 2;
const ARROW = 3;

/** Two strokes that cross in a point, each `2 * CROSS` mm long on paper. */
function cross({ x, y }: Point): Chain[] {
  const r = CROSS / SCALE;
  return [[line({ x: x - r, y }, { x: x + r, y })], [line({ x, y: y - r }, { x, y: y + r })]];
}

/** A grainline along centre front, halfway to the bust point, with an arrow head at each end. */
function grainline(bust: Point, top: number, bottom: number): Chain[] {
  const x = bust.x / 2;
  const [from, to] = [top + (bottom - top) / 3, bottom - (bottom - top) / 6];
  const r = ARROW / SCALE;
  const head = (y: number, way: 1 | -1): Chain[] =>
    [0.5, -0.5].map((side) => [line({ x, y }, { x: x + side * r, y: y + way * r })]);
  return [[line({ x, y: from }, { x, y: to })], ...head(from, 1), ...head(to, -1)];
}

/** The bare half front, each edge a path of its own (the legs of its darts among them), with bust point and grain; half scale. */
export function frontBlock(front: Piece): Block {
  const edges = outlineOf(front);
  const box = boundsOf(edges.map((edge) => edge.chain));
  const bust = landmark(front, 'right/bust-point');
  const path = (name: string, width: number, chain: Chain, draw: ReturnType<typeof toPaper>): string =>
    `<path data-piece="${escapeText(front.id)}" data-line="${escapeText(name)}" stroke-width="${width}" d="${pathData(chain, draw, false)}"/>`;
  return {
    width: (box.maxX - box.minX) * SCALE,
    height: (box.maxY - box.minY) * SCALE,
    draw: (x, y) => {
      const paper = toPaper({ x: box.minX, y: box.minY }, x, y);
      const at = bust && paper(bust);
      return [
        '<g fill="none" stroke="#000" stroke-linecap="round" stroke-linejoin="round">',
        ...edges.map((edge) => path(edge.id, 0.35, edge.chain, paper)),
        ...(bust ? cross(bust).map((chain) => path('bust', 0.25, chain, paper)) : []),
        ...(bust
          ? grainline(bust, box.minY, box.maxY).map((chain) => path('grain', 0.25, chain, paper))
          : []),
        '</g>',
        ...(at ? [textAt(at.x + CROSS + 1, at.y - 1, TEXT, 'B')] : []),
        textAt(
          paper({ x: box.maxX, y: 0 }).x - 1.5,
          y + ((box.maxY - box.minY) * SCALE) / 2,
          TEXT,
          'CF',
          'end',
        ),
      ].join('');
    },
  };
}
