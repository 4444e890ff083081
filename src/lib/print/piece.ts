import { line } from '../geometry/segment.ts';
import type { Chain } from '../geometry/types.ts';
import { cutLine } from '../pattern/allowance.ts';
import { chainOf, outlineOf } from '../pattern/outline.ts';
import type { Grainline, Piece } from '../pattern/types.ts';
import { formatLength, type Units } from '../strings/units.ts';
import { textBlock, type Block } from './block.ts';
import { captionSpot } from './caption-spot.ts';
import { boundsOf, pathData, SCALE, toPaper, type ToPaper } from './half-scale.ts';
import { easedStretches } from './eased.ts';
import { notchStrokes } from './notches.ts';
import { escapeText, textAt } from './svg.ts';

const CAPTION = 3.2;
const SMALL = 3;
const GAP = 4;
/** Length of a grainline's arrow head, mm on paper. */
const HEAD = 3;

const STYLES: Readonly<Record<string, string>> = {
  cut: 'stroke-width="0.5"',
  seam: 'stroke-width="0.35" stroke-dasharray="3 1.2"',
  notch: 'stroke-width="0.5"',
  grain: 'stroke-width="0.35"',
  fold: 'stroke-width="0.25" stroke-dasharray="4 1"',
};

function path(piece: Piece, kind: string, chain: Chain, paper: ToPaper, closed = false): string {
  const names = `data-piece="${escapeText(piece.id)}" data-line="${kind}"`;
  return `<path ${names} ${STYLES[kind]} d="${pathData(chain, paper, closed)}"/>`;
}

/** The two strokes of an arrow head at each end. */
function heads({ from, to }: Grainline): Chain[] {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return [];
  const [ux, uy] = [(dx / length) * (HEAD / SCALE), (dy / length) * (HEAD / SCALE)];
  const at = (x: number, y: number, way: 1 | -1): Chain[] =>
    [0.5, -0.5].map((side) => [
      line({ x, y }, { x: x + way * (ux - side * uy), y: y + way * (uy + side * ux) }),
    ]);
  return [...at(from.x, from.y, 1), ...at(to.x, to.y, -1)];
}

/**
 * A piece true to half scale with its caption: seam line dashed, cut line drawn through, notches, grainline, folds, what is eased,
 * gathered or tucked in (full size, in the learner's units). The caption stands inside where there is room, under the piece otherwise.
 */
export function pieceBlock(piece: Piece, caption: readonly string[], units: Units): Block {
  const seam = chainOf(outlineOf(piece));
  const drawn = cutLine(piece);
  const cut = drawn?.cut;
  const notches = notchStrokes(piece, drawn);
  const grain = piece.grainline;
  const grainlines = grain ? [[line(grain.from, grain.to)], ...heads(grain)] : [];
  const folds = piece.parts.flatMap((part) =>
    part.lines.filter((inner) => inner.kind === 'fold').map((inner) => inner.chain),
  );
  const eased = easedStretches(piece);
  const box = boundsOf([seam, ...(cut ? [cut] : []), ...notches, ...grainlines]);
  const text = textBlock(caption, CAPTION, true);
  const room = { width: text.width / SCALE, height: text.height / SCALE };
  const spot = captionSpot(seam, room, [...grainlines, ...folds, ...eased.map(({ clear }) => clear)]);
  const size = { width: (box.maxX - box.minX) * SCALE, height: (box.maxY - box.minY) * SCALE };
  return {
    width: spot ? size.width : Math.max(size.width, text.width),
    height: spot ? size.height : size.height + GAP + text.height,
    draw: (x, y) => {
      const paper = toPaper({ x: box.minX, y: box.minY }, x, y);
      const middle = spot && paper(spot);
      const words = middle
        ? text.draw(middle.x - text.width / 2, middle.y - text.height / 2)
        : text.draw(x, y + size.height + GAP);
      return [
        '<g fill="none" stroke="#000" stroke-linejoin="round">',
        path(piece, 'seam', seam, paper, true),
        ...(cut ? [path(piece, 'cut', cut, paper, true)] : []),
        ...notches.map((chain) => path(piece, 'notch', chain, paper)),
        ...grainlines.map((chain) => path(piece, 'grain', chain, paper)),
        ...folds.map((chain) => path(piece, 'fold', chain, paper)),
        '</g>',
        ...eased.map(({ how, at, amount }) => {
          const p = paper(at);
          return textAt(p.x, p.y, SMALL, `${how} ${formatLength(amount, units)}`, 'middle');
        }),
        words,
      ].join('');
    },
  };
}
