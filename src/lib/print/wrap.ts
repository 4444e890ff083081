import { textWidth } from './svg.ts';

/** A word that is longer than a line, in pieces that are not. */
function pieces(word: string, most: number): string[] {
  const letters = [...word];
  const out: string[] = [];
  for (let i = 0; i < letters.length; i += most) out.push(letters.slice(i, i + most).join(''));
  return out;
}

/** Lines of text broken between words so that none is wider than `width` mm at `size` mm; an empty line stays one. */
export function wrapped(lines: readonly string[], width: number, size: number): string[] {
  const most = Math.max(1, Math.floor(width / textWidth('m', size)));
  return lines.flatMap((line) => {
    const out: string[] = [];
    let row = '';
    for (const word of line.split(' ').flatMap((word) => pieces(word, most))) {
      const longer = row === '' ? word : `${row} ${word}`;
      if ([...longer].length <= most) row = longer;
      else {
        out.push(row);
        row = word;
      }
    }
    return [...out, row];
  });
}
