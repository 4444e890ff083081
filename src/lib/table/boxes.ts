import { chainBounds } from '../geometry/chain.ts';
import { applyTo } from '../geometry/isometry.ts';
import type { Box, Isometry } from '../geometry/types.ts';
import type { CutLine } from '../pattern/allowance.ts';
import type { Part, Piece } from '../pattern/types.ts';
import { late } from './late.ts';

export function unite(boxes: readonly Box[]): Box {
  return {
    minX: Math.min(...boxes.map((box) => box.minX)),
    minY: Math.min(...boxes.map((box) => box.minY)),
    maxX: Math.max(...boxes.map((box) => box.maxX)),
    maxY: Math.max(...boxes.map((box) => box.maxY)),
  };
}

/** A box that holds the box moved by m. */
export function moved(box: Box, m: Isometry): Box {
  const corners = [box.minX, box.maxX].flatMap((x) => [box.minY, box.maxY].map((y) => applyTo(m, { x, y })));
  return unite(corners.map((p) => ({ minX: p.x, minY: p.y, maxX: p.x, maxY: p.y })));
}

const partBoxes = new WeakMap<Part, Box>();
export function partBox(part: Part): Box {
  let box = partBoxes.get(part);
  if (!box) partBoxes.set(part, (box = chainBounds(part.edges.flatMap((edge) => edge.chain))));
  return box;
}

const cuts = new WeakMap<Piece, { cut: CutLine | undefined }>();
/** The cut line of a piece, worked out once. */
export function cutOf(piece: Piece): CutLine | undefined {
  if (!late.cutLine) return undefined;
  let kept = cuts.get(piece);
  if (!kept) cuts.set(piece, (kept = { cut: late.cutLine(piece) }));
  return kept.cut;
}

export function pieceBox(piece: Piece): Box {
  const boxes = piece.parts.map(partBox);
  if (piece.seam) boxes.push(chainBounds(piece.seam.flatMap((edge) => edge.chain)));
  const cut = cutOf(piece);
  if (cut) boxes.push(chainBounds(cut.cut));
  return unite(boxes);
}
