import type { Fabric, Work } from '../../recipe/types.ts';
import { isBack, piecesFor } from '../table.ts';
import { areaOf, type PaperArea } from './area.ts';
import { bustPointsOf, type BustPoint } from './bust-points.ts';
import { leftoversOf, type Leftover } from './leftover.ts';
import { seamPairsOf, type SeamPair } from './seam-pairs.ts';

/** What holds on any table, whatever is done on it, and what the table has of it now: measures and no mark. mm, mm², radians. */
export interface Invariants {
  readonly bustPoints: readonly BustPoint[];
  readonly area: PaperArea;
  readonly seams: readonly SeamPair[];
  readonly leftovers: readonly Leftover[];
}

/** The invariants of the pieces that are worked on for a fabric: its copies once there are any. Pure; measured on the edges as they lie. */
export function invariantsOf(work: Work, fabric: Fabric): Invariants {
  const copies = piecesFor(work, fabric);
  const backs = copies.some(isBack)
    ? []
    : work.pieces.filter((piece) => isBack(piece) && !piece.id.includes('@'));
  const pieces = [...copies, ...backs];
  const fronts = pieces.filter((piece) => !isBack(piece));
  return {
    bustPoints: bustPointsOf(work, fronts),
    area: areaOf(work, fronts),
    seams: seamPairsOf(pieces),
    leftovers: leftoversOf(pieces),
  };
}
