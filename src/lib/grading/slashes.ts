import type { Dart, Piece } from '../pattern/types.ts';
import { isSlash } from '../pattern/slash-line.ts';
import type { DrawnLine, Work } from '../recipe/types.ts';
import { ownFront } from './table.ts';

/** A slash on the table: the line as it was drawn, on the paper before any cut, and the dart that it became once it was cut. */
export interface Slashed {
  readonly line: DrawnLine;
  readonly piece: Piece;
  readonly dart: Dart | undefined;
}

/** The slash lines of the learner's own front in the order in which they were first drawn, cut or not. */
export function slashesOn(work: Work): readonly Slashed[] {
  const found: Slashed[] = [];
  for (const line of work.lines) {
    for (const piece of ownFront(work)) {
      const dart = piece.darts.find((d) => d.id === line.id && isSlash(d));
      const drawn = piece.parts.some((p) => p.lines.some((l) => l.id === line.id && l.kind === 'slash'));
      if (dart !== undefined || drawn) {
        found.push({ line, piece, dart });
        break;
      }
    }
  }
  return found;
}

/** The edge of the block that an edge id means: what a cut divided (`right/side.2`) still belongs to it. */
export const wholeEdge = (id: string): string => id.replace(/(\.\d+)+$/, '');

/** The slashes that start on each of the wanted edges, each slash taken once; undefined where there is none. */
export function slashesFrom(
  slashes: readonly Slashed[],
  edges: readonly string[],
): readonly (Slashed | undefined)[] {
  const taken = new Set<Slashed>();
  return edges.map((edge) => {
    const found = slashes.find(
      (s) => !taken.has(s) && s.line.ends[0] !== undefined && wholeEdge(s.line.ends[0]) === edge,
    );
    if (found) taken.add(found);
    return found;
  });
}
