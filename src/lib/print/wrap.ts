import { textWidth } from './svg.ts';

/** A word that is longer than a line, in pieces that are not. */
function pieces(word: string, most: number): string[] {
  const letters = [...word];
  const out: string[] = [];
  for (let i = 0; i < letters.length; i += most) out.push(letters.slice(i, i + most).join(''));
  return out;
}

/**
 * Text that was written in short lines, one line for each paragraph and list item (`- `, going on where a line is indented), so that it can
 * be broken anew; empty lines stay.
 */
export function joined(lines: readonly string[]): string[] {
  const out: string[] = [];
  for (const line of lines) {
    const last = out.at(-1);
    const goesOn = last?.startsWith('- ') ? line.startsWith('  ') : !line.startsWith('- ');
    if (last && line.trim() !== '' && goesOn) out[out.length - 1] = `${last} ${line.trim()}`;
    else out.push(line);
  }
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
