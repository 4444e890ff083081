import { openings } from '../../pattern/openings.ts';
import { styleSides } from '../../pattern/seam.ts';
import type { Fullness, Piece, Treatment } from '../../pattern/types.ts';

/** What a seam edge is longer by than it is sewn, where a dart was moved into it. mm. */
export interface Leftover {
  readonly piece: string;
  readonly dart: string;
  readonly kind: 'open' | Treatment['kind'] | Fullness['as'];
  /** How far it is open, measured on the cut edges; of a gathered edge how long the new edge is. */
  readonly excess: number;
}

/** Openings that a moved dart left in the style seam and what was done with them, and edges that are gathered, eased or tucked. */
export function leftoversOf(pieces: readonly Piece[]): Leftover[] {
  const sides = styleSides(pieces);
  const between = [sides?.a.piece, sides?.b.piece];
  return pieces.flatMap((piece): Leftover[] => {
    const partner = between.find((one) => one !== undefined && one !== piece);
    const open = between.includes(piece) ? openings(piece, partner) : [];
    return [
      ...open.map(({ dart, excess }): Leftover => {
        const treated = piece.treatments.find((one) => one.dart === dart);
        return {
          piece: piece.id,
          dart,
          kind: treated?.kind ?? 'open',
          excess: treated?.excess ?? excess,
        };
      }),
      ...(piece.fullness ?? []).map(({ dart, as, fullness }) => ({
        piece: piece.id,
        dart,
        kind: as,
        excess: fullness,
      })),
    ];
  });
}
