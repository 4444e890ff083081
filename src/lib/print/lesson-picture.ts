import { isBack } from '../machines/scene.ts';
import { piecesOf } from '../pattern/copy.ts';
import type { Piece } from '../pattern/types.ts';
import type { Fabric, Work } from '../recipe/types.ts';
import { pieceBox, unite, moved } from '../table/boxes.ts';
import { layOut, matrixOf, placeOf } from '../table/layout.ts';
import { pieceModel, type Cloth, type Stroke } from '../table/model.ts';
// With whatever comes late to the table: cut lines, eased stretches.
import '../table/phases/drawn/cut.ts';
import '../table/phases/drawn/fullness.ts';
import '../table/phases/drawn/proof.ts';
import '../table/phases/drawn/treat.ts';
import '../table/phases/drawn/finish.ts';

/** `line` bounds the paper, `fine` lies within it, `mark` is a notch, a cross or a grainline. */
export type PictureStroke = 'line' | 'fine' | 'mark';

/** A piece of a small picture, mm at full size before `transform`. Each `d` is the `d` of an SVG path. */
export interface PicturePiece {
  readonly transform: string;
  readonly cloth: Cloth;
  readonly paper: string;
  readonly strokes: Readonly<Partial<Record<PictureStroke, string>>>;
}

/** A small picture of what lies on the table: plain data, so that a page draws it in its own colours. */
export interface LessonPicture {
  readonly viewBox: string;
  readonly pieces: readonly PicturePiece[];
}

/** Drawn this many mm around the pieces, full size: half of the widest stroke and a little. */
const ROOM = 8;
/** A picture is a little higher than wide, as a front is. */
const ASPECT = 0.9;

const KIND: Readonly<Partial<Record<Stroke, PictureStroke>>> = {
  edge: 'line',
  leg: 'line',
  slashed: 'line',
  cut: 'line',
  notch: 'mark',
  bust: 'mark',
  grain: 'mark',
};
/** Lines of the sheets that are hidden once a new seam line lies over them. */
const HIDDEN: readonly Stroke[] = ['edge', 'leg', 'slashed'];

function drawn(piece: Piece, digits: number): Omit<PicturePiece, 'transform'> {
  const factor = 10 ** digits;
  const rounded = (d: string): string =>
    d.replace(/-?\d+(\.\d+)?/g, (n) => String(Math.round(Number(n) * factor) / factor));
  const model = pieceModel(piece);
  const inside = model.parts
    .flatMap((part) => part.strokes)
    .filter(({ stroke }) => !model.sheet || !HIDDEN.includes(stroke));
  const by: Partial<Record<PictureStroke, string>> = {};
  for (const { stroke, d } of [...inside, ...model.strokes]) {
    const kind = KIND[stroke] ?? 'fine';
    // Inside a cut line the seam line is the finer of the two.
    const own = model.allowance && stroke !== 'cut' && kind === 'line' ? 'fine' : kind;
    by[own] = (by[own] ?? '') + rounded(d);
  }
  const paper = model.allowance ?? model.sheet ?? model.parts.map(({ fill }) => fill).join('');
  return { cloth: model.cloth, paper: rounded(paper), strokes: by };
}

/**
 * A small picture of the result of a lesson: the front as it lies on the table at the end, the set for one cloth, laid out so
 * that no piece lies on another. `digits` after the point of a millimetre, 0 for a very small picture. Pure.
 */
export function lessonPicture(work: Work, fabric: Fabric, digits = 1): LessonPicture {
  const pieces = piecesOf(work.pieces, fabric).filter((piece) => !isBack(piece));
  const layout = layOut(pieces, {}, ASPECT);
  const box = unite(pieces.map((piece) => moved(pieceBox(piece), placeOf(layout, piece.id))));
  const round = (value: number): number => Math.round(value * 10) / 10;
  return {
    viewBox: [
      box.minX - ROOM,
      box.minY - ROOM,
      box.maxX - box.minX + 2 * ROOM,
      box.maxY - box.minY + 2 * ROOM,
    ]
      .map(round)
      .join(' '),
    pieces: pieces.map((piece) => ({
      transform: matrixOf(placeOf(layout, piece.id)),
      ...drawn(piece, digits),
    })),
  };
}
