import type { Isometry, Point } from '../geometry/types.ts';
import { chainBounds } from '../geometry/chain.ts';
import { applyTo } from '../geometry/isometry.ts';
import { contains } from '../geometry/outline.ts';
import { overlay } from '../pattern/overlay.ts';
import { outlineOf } from '../pattern/outline.ts';
import { slivers } from '../pattern/slivers.ts';
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
  /** What a treatment added or took away: all by which a treated piece may differ from the block. */
  readonly slivers: readonly {
    readonly key: string;
    readonly d: string;
    readonly motion: Isometry;
    /** Only what lies on this sheet is shown. */
    readonly clip: string | undefined;
    readonly added: boolean;
    readonly width: number;
    /** Where its width is written, once for each sliver. */
    readonly label: Point | undefined;
  }[];
}

/** The block as it was opened out with the parts of the overlaid pieces on it; undefined while nothing was laid on it. */
export function overlayOf(work: Work, pieces: readonly Piece[]): Overlaid | undefined {
  const block = work.opened;
  const laid = pieces.filter((piece) => work.overlaid.includes(piece.id));
  if (!block || laid.length === 0) return undefined;
  const fitsOf = new Map(laid.map((piece) => [piece, overlay(piece, block, work.lines)]));
  const parts = laid.flatMap((piece) => {
    const fits = fitsOf.get(piece) ?? [];
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
  const changed = laid.flatMap((piece) => {
    const fits = fitsOf.get(piece) ?? [];
    const sheets = piece.parts.flatMap((part) => {
      const motion = fits.find((fit) => fit.part === part.id)?.motion;
      return motion ? [{ part, motion, outline: part.edges.flatMap((edge) => edge.chain) }] : [];
    });
    const kept = sheets.find(({ part }) => part.grain === 'kept') ?? sheets[0];
    return slivers(piece).flatMap(({ edge, chain, area, width }) => {
      const spot = middle(chainBounds(chain));
      const under = sheets.find(({ outline }) => contains(outline, spot) === 'inside') ?? kept;
      if (!under) return [];
      const base = { d: closedPath([chain]), added: area > 0, width };
      const label = applyTo(under.motion, spot);
      // What was taken off lies on the sheets as they were cut, and goes with each of them when the opening closes.
      const bearers = base.added ? [under] : sheets;
      return bearers.map(({ part, motion }) => ({
        ...base,
        key: `${piece.id} ${edge} ${part.id}`,
        motion,
        clip: base.added ? undefined : partModel(part).fill,
        label: part === under.part ? label : undefined,
      }));
    });
  });
  return {
    block,
    outline: closedPath(outlineOf(block).map((edge) => edge.chain)),
    ids: laid.map((piece) => piece.id),
    parts,
    slivers: changed,
  };
}
