import { allSteps, type Lesson } from '../lessons/types.ts';
import type { Piece } from '../pattern/types.ts';
import type { BlockForm } from '../pattern/block.ts';
import { CAUTIONS } from '../strings/cautions.ts';
import { besides, stack, textBlock, type Block } from './block.ts';
import { onPages, type Flowing } from './pages.ts';
import { frontBlock } from './practice-block.ts';
import { escapeText, num, shorten } from './svg.ts';
import { testSquares } from './test-squares.ts';
import { joined, wrapped } from './wrap.ts';

/** What of a lesson or drill goes on its practice sheet. */
export type PracticeExercise = Pick<Lesson, 'title' | 'figure' | 'form'> & {
  readonly given?: readonly Told[];
  readonly steps: readonly Told[];
};
type Told = Pick<Lesson['steps'][number], 'title' | 'text'>;

/** Margin of a printed page, mm: more than most printers leave white. */
const MARGIN = 8;
/** What fits between the margins both of A4 (210 × 297 mm, ISO 216) and of Letter (215.9 × 279.4 mm, 8.5 × 11 in), mm; both from memory. */
const SHEET = { width: 194, height: 263 };
/** Strokes along the end of a drawing need half of their width, mm. */
const INSET = 0.5;
const PAGE = { width: SHEET.width - 2 * INSET, height: SHEET.height - 2 * INSET };
const GAP = 6;
const TEXT = 3.2;
const HEAD = 4.2;

const FORMS: Readonly<Record<BlockForm, string>> = {
  side: 'dart in the side',
  'two-dart': 'darts in the side and the waist',
  waist: 'dart in the waist',
};

const text = (words: readonly string[], size: number): Block =>
  textBlock(wrapped(words, PAGE.width, size), size);

/** A heading, and its text line by line, so that it may run on to the next page. */
function section(heading: string, words: readonly string[]): Flowing[] {
  const lines = wrapped(words, PAGE.width, TEXT);
  return [
    { ...text([heading], HEAD), above: GAP, withNext: true },
    // Neither the first nor the last line of a text stands alone.
    ...lines.map((line, i) => ({
      ...textBlock([line], TEXT),
      above: i === 0 ? 1 : 0,
      withNext: i === 0 ? lines.length > 1 : i === lines.length - 2,
    })),
  ];
}

const TOO_LARGE = 'This block is larger than A4 and Letter: print it on larger paper, at 100 %.';
/** The sheet is for the table at home, where there are blades. */
const SCISSORS = 'No step on this sheet needs more than scissors.';

const AFTERWARDS =
  'Measure angle, legs, intake, seams and allowances on your paper as it is, and enter them under “My work”, “Worked on paper”: you get the same findings as for work on the screen.';
const NEXT_PAGE = 'The test squares are on the next page.';

/** What stands over the block, the block, and the test squares: beside it where there is room, else under it or on the next page. */
function opening(title: string, told: string, front: Piece): Flowing[] {
  const block = frontBlock(front);
  const large = block.width > PAGE.width || block.height > PAGE.height;
  const beside = besides([block, testSquares('column')], 2 * GAP);
  const one = beside.width <= PAGE.width ? beside : block;
  const below = one === block ? [{ ...testSquares('row'), above: GAP }] : [];
  const headed = (more: readonly string[]): Block =>
    stack([text([title], HEAD), text([[told, ...more].join(' ')], TEXT)], 1);
  const room =
    PAGE.height - GAP - one.height - below.reduce((sum, { above, height }) => sum + above + height, 0);
  const more = large ? [TOO_LARGE] : headed([]).height > room ? [NEXT_PAGE] : [];
  const head = headed(more);
  return [
    { ...head, above: 0, withNext: head.height + GAP + one.height <= PAGE.height },
    { ...one, above: GAP },
    ...below,
  ];
}

function pageSvg(page: Block, name: string): string {
  const width = num(Math.max(PAGE.width, page.width) + 2 * INSET);
  const height = num(Math.max(PAGE.height, page.height) + 2 * INSET);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" font-family="sans-serif" fill="#000"><title>${escapeText(name)}</title>${page.draw(INSET, INSET)}</svg>`;
}

const STYLE = `@page{margin:${MARGIN}mm}body{margin:0}svg{display:block;break-after:page}svg:last-child{break-after:auto}@media screen{body{background:#ddd}svg{background:#fff;margin:20mm auto;outline:${MARGIN}mm solid #fff}}`;

/**
 * The practice sheet of an exercise as a document that prints by itself, for working it on paper: the bare half front of its block (as
 * drafted, nothing extended or cut, without allowance), test squares, the cautions with blades and the text of every step, also
 * of those that are given on the table. Each page is an
 * SVG drawing that fits A4 and Letter; one unit of it is one millimetre on paper and the block is at half scale, so it measures true when it
 * is printed at 100 %. A block larger than a page has a larger drawing, for larger paper. Pure; throws RangeError when the block holds
 * a number that is none.
 */
export function practiceSheet(exercise: PracticeExercise, front: Piece): string {
  const title = `${shorten(exercise.title, 70)}: practice sheet`;
  const form = exercise.form === undefined ? '' : `, ${FORMS[exercise.form]}`;
  const told = `Half front of figure ${exercise.figure}${form}, the wearer’s right. Half scale: 1 mm on this sheet is 2 mm of the garment. B is the bust point, CF centre front; the arrow is the grain. No allowance.`;
  const pages = onPages(
    [
      ...opening(title, told, front),
      ...section('Take care', Object.values({ ...CAUTIONS, scissors: SCISSORS })),
      ...allSteps(exercise).flatMap((step, i) => section(`${i + 1}. ${step.title}`, joined(step.text))),
      ...section('Afterwards', [AFTERWARDS]),
    ],
    PAGE,
  );
  return [
    '<!doctype html>\n<html lang="en"><head><meta charset="utf-8">',
    `<title>${escapeText(title)}</title><style>${STYLE}</style></head><body>\n`,
    ...pages.map((page, i) => `${pageSvg(page, `${title}, page ${i + 1} of ${pages.length}`)}\n`),
    '</body></html>\n',
  ].join('');
}
