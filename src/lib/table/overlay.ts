import type { Isometry, Point } from '../geometry/types.ts';
import { applyTo } from '../geometry/isometry.ts';
import { outlineOf } from '../pattern/outline.ts';
import { overlay } from '../pattern/overlay.ts';
import type { Piece } from '../pattern/types.ts';
import type { Work } from '../recipe/types.ts';
import { middle } from './layout.ts';
import { partBox } from './boxes.ts';
import { clothOf, partModel, type Cloth } from './model.ts';
import { closedPath } from './paths.ts';

/** Pieces laid on the block, each rigid part for itself. */
export interface Overlaid {
  readonly block: Piece;
  readonly outline: string;
  readonly ids: readonly string[];
  readonly parts: readonly {
    readonly key: string;
    readonly cloth: Cloth;
    readonly d: string;
    readonly motion: Isometry;
    readonly residual: number;
    readonly middle: Point;
  }[];
}

/** The block as it was opened out with the parts of the overlaid pieces on it; undefined while nothing was laid on it. */
export function overlayOf(work: Work, pieces: readonly Piece[]): Overlaid | undefined {
  const block = work.opened;
  const laid = pieces.filter((piece) => work.overlaid.includes(piece.id));
  if (!block || laid.length === 0) return undefined;
  const parts = laid.flatMap((piece) => {
    const fits = overlay(piece, block);
    return piece.parts.flatMap((part) => {
      const fit = fits.find((one) => one.part === part.id);
      if (!fit) return [];
      return [
        {
          key: `${piece.id} ${part.id}`,
          cloth: clothOf(piece),
          d: partModel(part).fill,
          motion: fit.motion,
          residual: fit.residual,
          middle: applyTo(fit.motion, middle(partBox(part))),
        },
      ];
    });
  });
  return {
    block,
    outline: closedPath(outlineOf(block).map((edge) => edge.chain)),
    ids: laid.map((piece) => piece.id),
    parts,
  };
}
