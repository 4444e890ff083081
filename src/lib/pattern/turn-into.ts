import type { Part, Piece } from './types.ts';
import { fallApart } from './fall-apart.ts';
import { together } from './hang.ts';
import { findDart, legsOf, partOf } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { pieceArea } from './measure.ts';
import { type TurnWish, type Turned, turnSheets } from './turn.ts';
import { withPiece } from './with.ts';

export interface TurnIntoWish extends TurnWish {
  /** The slash (or another dart that reaches the same point) that opens as the dart closes. */
  readonly into: string;
}

/**
 * Turns what lies between two darts about `pivot`: one closes, the other opens by as much. `freed` is the side of the two without
 * the centre front, `rest` the other one; a part's id names the side that it is on. Whatever hangs together by the other darts, open or taped,
 * turns together. Else as `turnPart`. Refusals: `already-finished`, `no-such-dart`, `not-slashed` while the dart's legs are on one
 * sheet, `not-between` when a cut at `into` does not divide the dart's legs, and those of `turnSheets`.
 */
export function turnInto(piece: Piece, wish: TurnIntoWish): Turned {
  if (piece.seam !== undefined) return refuse('already-finished', { dart: wish.dart });
  const apart = fallApart(piece);
  const sides = sidesOf(apart, wish.dart, wish.into);
  if ('refused' in sides) return sides;
  const { freed, rest } = sides.ok;
  const moving =
    wish.part === 'freed'
      ? freed
      : wish.part === 'rest'
        ? rest
        : [freed, rest].find((side) => side.has(wish.part));
  if (moving === undefined) return refuse('no-such-part', { part: wish.part });
  const dart = findDart(apart, wish.dart)!;
  const { into, outOf } = legsOf(apart, dart)!;
  const inPart = partOf(apart, into.id)!.id;
  const part = moving.has(inPart) ? inPart : partOf(apart, outOf.id)!.id;
  const turned = turnSheets(apart, dart, moving, part, wish);
  if ('refused' in turned) return turned;
  return done({ piece: turned.ok.piece, fact: { ...turned.ok.fact, into: wish.into } });
}

interface Sides {
  readonly freed: ReadonlySet<string>;
  readonly rest: ReadonlySet<string>;
}

/** The sheets on the two sides of a pair of darts, by part ids. */
export function sidesOf(piece: Piece, dartId: string, intoId: string): Outcome<Sides> {
  const sheets = (id: string): readonly [string, string] | undefined => {
    const dart = findDart(piece, id);
    const legs = dart && legsOf(piece, dart);
    return legs && [partOf(piece, legs.into.id)!.id, partOf(piece, legs.outOf.id)!.id];
  };
  const own = sheets(dartId);
  if (own === undefined) return refuse('no-such-dart', { dart: dartId });
  const other = sheets(intoId);
  if (other === undefined) return refuse('no-such-dart', { dart: intoId });
  if (own[0] === own[1]) return refuse('not-slashed', { dart: dartId });

  const pairs = piece.hinges.filter((h) => h.dart !== dartId && h.dart !== intoId).map((h) => h.parts);
  for (const d of piece.darts) {
    if (d.id === dartId || d.id === intoId) continue;
    const held = sheets(d.id);
    if (held !== undefined) pairs.push(held);
  }
  const a = together(own[0], pairs);
  const b = together(own[1], pairs);
  const divides =
    dartId !== intoId &&
    !a.has(own[1]) &&
    (a.has(other[0]) ? b.has(other[1]) : b.has(other[0]) && a.has(other[1]));
  if (!divides) return refuse('not-between', { dart: dartId, into: intoId });
  const stays = keepsCentre(piece, a, b);
  return done({ freed: stays === a ? b : a, rest: stays });
}

/** The side with the neck at centre front, else the waist there, else the larger one: as a slash keeps its sheets' names. */
function keepsCentre(piece: Piece, a: ReadonlySet<string>, b: ReadonlySet<string>): ReadonlySet<string> {
  const on = (side: ReadonlySet<string>): readonly Part[] => piece.parts.filter((p) => side.has(p.id));
  for (const id of ['neck-centre', 'waist-centre']) {
    const [onA, onB] = [a, b].map((side) => on(side).some((p) => p.landmarks[id] !== undefined));
    if (onA !== onB) return onA ? a : b;
  }
  const area = (side: ReadonlySet<string>): number => pieceArea(withPiece(piece, { parts: on(side) }));
  return area(a) >= area(b) ? a : b;
}
