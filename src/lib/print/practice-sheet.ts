import { line } from '../geometry/segment.ts';
import type { Chain, Point } from '../geometry/types.ts';
import type { Lesson } from '../lessons/types.ts';
import { landmark, outlineOf } from '../pattern/outline.ts';
import type { BlockForm, Piece } from '../pattern/types.ts';
import { CAUTIONS } from '../strings/cautions.ts';
import { stack, textBlock, type Block } from './block.ts';
import { boundsOf, pathData, SCALE, toPaper } from './half-scale.ts';
import { escapeText, num, shorten, textAt } from './svg.ts';
import { testSquares } from './test-squares.ts';
import { wrapped } from './wrap.ts';

/** What of a lesson or drill goes on its practice sheet. */
export type PracticeExercise = Pick<Lesson, 'title' | 'figure' | 'form'> & {
  readonly steps: readonly Pick<Lesson['steps'][number], 'title' | 'text'>[];
};

const MARGIN = 10;
const GAP = 8;
const TEXT = 3.2;
const HEAD = 4.2;
/** Text is no wider than this, so that the sheet fits on A4 (210 mm) where the block does: mm on paper. */
const COLUMN = 186;
/** Half the length of a stroke of the bust point's cross, and the length of an arrow head, mm on paper. */
const CROSS = 2;
const ARROW = 3;

const FORMS: Readonly<Record<BlockForm, string>> = {
  side: 'dart in the side',
  'two-dart': 'darts in the side and the waist',
  waist: 'dart in the waist',
};

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

/** The bare half front, each edge a path of its own (the legs of its darts among them), with bust point and grain. */
function frontBlock(front: Piece): Block {
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

/** A heading with its text under it. */
const section = (heading: string, lines: readonly string[]): Block =>
  stack(
    [textBlock(wrapped([heading], COLUMN, HEAD), HEAD), textBlock(wrapped(lines, COLUMN, TEXT), TEXT)],
    1,
  );

/**
 * The practice sheet of an exercise as an SVG document of its own, for working it on paper: the bare half front of its block (as
 * drafted, nothing extended or cut, without allowance), test squares, the cautions with blades and the text of every step. One unit of the
 * drawing is one millimetre on paper and the block is at half scale, so it measures true when it is printed at 100 %. Pure; throws
 * RangeError when the block holds a number that is none.
 */
export function practiceSheet(exercise: PracticeExercise, front: Piece): string {
  const title = `${shorten(exercise.title, 70)}: practice sheet`;
  const form = exercise.form === undefined ? '' : `, ${FORMS[exercise.form]}`;
  const body = stack(
    [
      section(title, [
        `Half front of figure ${exercise.figure}${form}, the wearer’s right. Half scale: 1 mm on this sheet is 2 mm of the garment. B is the bust point, CF centre front; the arrow is the grain. No allowance.`,
      ]),
      frontBlock(front),
      testSquares(),
      section('Take care', Object.values(CAUTIONS)),
      ...exercise.steps.map((step, i) => section(`${i + 1}. ${step.title}`, step.text)),
    ],
    GAP,
  );
  const width = num(body.width + 2 * MARGIN);
  const height = num(body.height + 2 * MARGIN);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" font-family="sans-serif" fill="#000">`,
    `<title>${escapeText(title)}</title>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    body.draw(MARGIN, MARGIN),
    '</svg>\n',
  ].join('');
}
