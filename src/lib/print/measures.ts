import { chainLength } from '../geometry/chain.ts';
import { seamGroups } from '../pattern/outline.ts';
import type { Piece } from '../pattern/types.ts';
import { nameOf } from '../strings/names.ts';
import { formatLength, type Units } from '../strings/units.ts';
import type { Block } from './block.ts';
import { SCALE } from './half-scale.ts';
import { num, shorten, textAt, textWidth } from './svg.ts';

type Row = readonly [name: string, full: string, half: string, allowance: string];

/** What a piece measures: the seam length of each of its seams at full size and on this sheet, its allowance, its leftover. */
export function measureRows(piece: Piece, units: Units): Row[] {
  const length = (mm: number): string => formatLength(mm, units);
  const seams = seamGroups(piece).map(({ id, edges }): Row => {
    // The cap of a dart is folded away when the seam is sewn.
    const whole = edges.reduce((sum, edge) => sum + (edge.role === 'cap' ? 0 : chainLength(edge.chain)), 0);
    const width = piece.allowances[id];
    return [
      nameOf(id),
      length(whole),
      length(whole * SCALE),
      width === undefined ? 'none set' : length(width),
    ];
  });
  const leftovers = piece.treatments.map(({ dart, kind, excess }): Row => {
    const name = kind === 'eased' ? 'eased in' : kind === 'trimmed' ? 'taken out' : 'bridged';
    return [`${dart} dart, ${name}`, length(excess), length(excess * SCALE), ''];
  });
  const full = (piece.fullness ?? []).map(({ dart, as, fullness }): Row => {
    return [`${nameOf(dart)} dart, ${as} in it`, length(fullness), length(fullness * SCALE), ''];
  });
  return [...seams, ...leftovers, ...full];
}

const SIZE = 3.2;
const ROW = 5;
const COLUMN = 4;

/** The measures of a piece as a table. */
export function measureTable(title: string, piece: Piece, units: Units): Block {
  const head: Row = ['seam line', 'full size', 'on this sheet', 'allowance, full size'];
  const rows = [head, ...measureRows(piece, units)];
  const widths = head.map((_, i) => Math.max(...rows.map((row) => textWidth(row[i]!, SIZE))) + COLUMN);
  const heading = shorten(title, 60);
  const table = widths.reduce((sum, width) => sum + width, 0);
  return {
    width: Math.max(table, textWidth(heading, SIZE)),
    height: (rows.length + 1) * ROW,
    draw: (x, y) => {
      const line = y + 2 * ROW;
      const cells = rows.flatMap((row, r) => {
        let left = x;
        return row.map((words, c) => {
          const width = widths[c]!;
          const at = c === 0 ? left : left + width - COLUMN;
          left += width;
          return textAt(at, y + (r + 2) * ROW - 1.4, SIZE, words, c === 0 ? 'start' : 'end');
        });
      });
      return [
        textAt(x, y + ROW - 1.4, SIZE * 1.1, heading),
        `<path d="M${num(x)} ${num(line)}H${num(x + table - COLUMN)}" stroke="#000" stroke-width="0.2" fill="none"/>`,
        ...cells,
      ].join('');
    },
  };
}
