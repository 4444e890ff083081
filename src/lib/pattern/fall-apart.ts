import type { Hinge, Part, Piece } from './types.ts';
import { samePoint } from '../geometry/point.ts';
import { rehang } from './hang.ts';
import { shareOut } from './share-out.ts';
import { freedId, keepsPlace } from './slash.ts';
import { withPart, withPiece } from './with.ts';

/**
 * The piece with every sheet divided that touches itself in a point: where two darts are drawn to one tip, what lies between them on
 * either side hangs together in that point only and can be turned. The divided sheets get a hinge and names as after a slash; a
 * piece without such a sheet comes back as it is.
 */
export function fallApart(piece: Piece): Piece {
  let now = piece;
  for (;;) {
    const next = divided(now);
    if (next === undefined) return now;
    now = next;
  }
}

function divided(piece: Piece): Piece | undefined {
  for (const part of piece.parts) {
    const at = touch(part);
    if (at === undefined) continue;
    const [i, j] = at;
    const dart = namingDart(
      piece,
      at.map((k) => dartAt(part, k)),
    );
    if (dart === undefined) continue;
    const one = part.edges.slice(i, j);
    const other = [...part.edges.slice(j), ...part.edges.slice(0, i)];
    const { left, right } = shareOut(part, one, other, []);
    const keeps = keepsPlace(left, right);
    const freed = withPart(keeps === left ? right : left, { id: freedId(dart) });
    const hinge: Hinge = { dart, parts: [freed.id, keeps.id], intact: true };
    const k = piece.parts.indexOf(part);
    return withPiece(piece, {
      parts: [...piece.parts.slice(0, k), keeps, ...piece.parts.slice(k + 1), freed],
      hinges: [...rehang(piece.hinges, part.id, freed, piece), hinge],
    });
  }
  return undefined;
}

/** The edges of a sheet that start in one point, the first such pair. */
function touch(part: Part): readonly [number, number] | undefined {
  const legs = part.edges.flatMap((e, i) => (e.role === 'dart-leg' ? [i] : []));
  for (const i of legs)
    for (const j of legs)
      if (i < j && samePoint(part.edges[i]!.chain[0]!.a, part.edges[j]!.chain[0]!.a)) return [i, j];
  return undefined;
}

/** The dart whose two legs meet where edge k starts, or undefined where two darts' legs do. */
function dartAt(part: Part, k: number): string | undefined {
  const { dart } = part.edges[k]!;
  return part.edges[(k + part.edges.length - 1) % part.edges.length]!.dart === dart ? dart : undefined;
}

/** Of the darts that the sheet is divided at the one that comes later on the piece and has no hinge yet. */
function namingDart(piece: Piece, at: readonly (string | undefined)[]): string | undefined {
  const free = piece.darts.filter((d) => at.includes(d.id) && !piece.hinges.some((h) => h.dart === d.id));
  return free.pop()?.id;
}
