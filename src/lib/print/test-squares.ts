import { besides, stack, textBlock, type Block } from './block.ts';
import { num, textAt } from './svg.ts';
import { wrapped } from './wrap.ts';

const square = (side: number, name: string): Block => ({
  width: side,
  height: side,
  draw: (x, y) =>
    `<rect data-test-square="${name}" x="${num(x)}" y="${num(y)}" width="${num(side)}" height="${num(side)}" fill="none" stroke="#000" stroke-width="0.25"/>` +
    textAt(x + side / 2, y + side / 2, 4, name, 'middle'),
});

const GAP = 10;
const TEXT = 3.2;

const WORDS = [
  'Measure me: if it is not 50 mm, the printer scaled the page.',
  'A4 fitted on Letter prints at 94 %, Letter fitted on A4 at 97 %.',
  'Print at 100 %, without "fit to page".',
];

/** A square of 50 mm and one of 2 inches on paper, and what to do with them: beside each other, or in a column as wide as they are. */
export function testSquares(as: 'row' | 'column' = 'row'): Block {
  const [mm, inch] = [square(50, '50 mm'), square(50.8, '2 in')];
  if (as === 'column') return stack([mm, inch, textBlock(wrapped(WORDS, inch.width, TEXT), TEXT)], 3);
  return stack([besides([mm, inch], GAP), textBlock(WORDS, TEXT)], 3);
}
