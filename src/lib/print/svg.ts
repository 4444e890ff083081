/** Millimetres on paper to a ten-thousandth, without idle zeros. Throws RangeError for what is no number: it must not be printed. */
export function num(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`cannot print the number ${value}`);
  const text = value.toFixed(4).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

const NAMED: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** What XML cannot hold, what turns the direction of writing round, and halves of characters. */
const UNFIT = /[\p{Cc}\p{Cs}\p{Bidi_Control}\ufffe\uffff]/gu;

/** Text that may come from a file, fit to stand in an element or in an attribute: never markup. */
export const escapeText = (text: string): string =>
  text.replace(UNFIT, ' ').replace(/[&<>"']/g, (c) => NAMED[c]!);

/** At most `most` characters, the last one an ellipsis where something was left out. */
export function shorten(text: string, most: number): string {
  const letters = [...text];
  return letters.length <= most ? text : `${letters.slice(0, most - 1).join('')}…`;
}

/** One line of text; x, y (its baseline) and size in mm. */
export function textAt(
  x: number,
  y: number,
  size: number,
  words: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
): string {
  const where = `x="${num(x)}" y="${num(y)}" font-size="${num(size)}"`;
  return `<text ${where}${anchor === 'start' ? '' : ` text-anchor="${anchor}"`}>${escapeText(words)}</text>`;
}

/** Width in mm that a line of text takes at most, for laying out; a plain sans-serif letter is narrower than this on average. */
export const textWidth = (words: string, size: number): number => 0.58 * size * [...words].length;
