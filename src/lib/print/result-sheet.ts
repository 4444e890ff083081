import { piecesOf } from '../pattern/copy.ts';
import { cutLine } from '../pattern/allowance.ts';
import { FIGURES } from '../pattern/figures.ts';
import type { Piece } from '../pattern/types.ts';
import type { Measures } from '../pattern/block.ts';
import type { Fabric, Work } from '../recipe/types.ts';
import { pieceName } from '../strings/names.ts';
import type { Units } from '../strings/units.ts';
import { textBlock, type Block } from './block.ts';
import { measureTable } from './measures.ts';
import { pack } from './pack.ts';
import { pieceBlock } from './piece.ts';
import { escapeText, num, shorten } from './svg.ts';
import { testSquares } from './test-squares.ts';

export interface SheetOptions {
  readonly fabric: Fabric;
  readonly units: Units;
  readonly lessonTitle: string;
  /** The exercise is measured at half scale; left out: at full size. */
  readonly scale?: 'half' | undefined;
}

const MARGIN = 12;
const GAP = 10;
const NAME = 40;

/** The code of a demo figure; own measurements are never written on the sheet. */
function figureOf(measures: Measures): string {
  const same = Object.entries(FIGURES).find(
    ([, f]) =>
      f.bust === measures.bust && f.waist === measures.waist && f.napeToWaist === measures.napeToWaist,
  );
  return same ? `figure ${same[0]}` : 'own measurements';
}

/** What a piece carries, line by line. */
function captionOf(piece: Piece, style: string, figure: string, count: string): string[] {
  const { label } = piece;
  const cut = label
    ? `cut ${label.cut}${label.onFold ? ' on the fold' : ''}${label.rightSideUp ? ', right side up (RSU)' : ''}`
    : 'number to cut: not said yet';
  return [
    style,
    shorten(label?.name ?? pieceName(piece.id), NAME),
    cut,
    `${figure}, half scale`,
    cutLine(piece) ? 'allowance included' : 'no allowance',
    count,
  ];
}

/**
 * The result sheet as an SVG document of its own: the pieces of the set that is sewn in this fabric (its copy where there
 * is one) with their lines, captions, measures and test squares. One unit of the drawing is one millimetre on paper and the
 * pieces are at half scale, so it measures true when it is printed at 100 %. Pure; throws RangeError when a piece holds a
 * number that is none.
 */
export function resultSheet(work: Work, { fabric, units, lessonTitle, scale }: SheetOptions): string {
  const style = shorten(lessonTitle, NAME);
  const figure = figureOf(work.block.measures);
  const pieces = piecesOf(work.pieces, fabric);
  const folds = pieces.some(({ parts }) => parts.some(({ lines }) => lines.some((l) => l.kind === 'fold')));
  const header = textBlock(
    [
      `${style}, for a ${fabric}, ${figure}`,
      'Half scale: 1 mm on this sheet is 2 mm of the garment, allowances too. Left and right are the wearer’s.',
      `Cut line drawn through, seam line dashed${folds ? ', folds in long dashes' : ''}. One stroke is a notch of the front, two of the back.`,
      ...(scale
        ? ['The exercise is measured at half scale: its lengths are those of the column “on this sheet”.']
        : []),
    ],
    4.5,
  );
  const blocks: Block[] = [
    ...pieces.map((piece, i) =>
      pieceBlock(piece, captionOf(piece, style, figure, `piece ${i + 1} of ${pieces.length}`), units),
    ),
    testSquares(),
    ...pieces.map((piece) => measureTable(piece.label?.name ?? pieceName(piece.id), piece, units)),
  ];
  const area = blocks.reduce((sum, block) => sum + (block.width + GAP) * (block.height + GAP), 0);
  const { spots, whole } = pack(blocks, Math.max(header.width, 1.4 * Math.sqrt(area)), GAP);
  const top = MARGIN + header.height + GAP;
  const width = num(Math.max(whole.width, header.width) + 2 * MARGIN);
  const height = num(top + whole.height + MARGIN);
  const title = escapeText(`${style}, half scale`);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" font-family="sans-serif" fill="#000">`,
    `<title>${title}</title>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    header.draw(MARGIN, MARGIN),
    ...blocks.map((block, i) => block.draw(MARGIN + spots[i]!.x, top + spots[i]!.y)),
    '</svg>\n',
  ].join('');
}
