import { overlay } from '../../pattern/overlay.ts';
import { fact, missing, names, near, tolerance } from '../finding.ts';
import { pieceOf } from '../table.ts';
import type { Check, Finding } from '../types.ts';

/**
 * Step 9: both pieces (`names.pieces`) were closed and laid on the block, and each rigid part, registered by its final outline, lies on
 * the block edge on edge. Tolerance `fit` in mm, on the largest distance of an edge from where it lay.
 */
export const overlaid: Check = ({ after }, spec) =>
  names(spec, 'pieces').flatMap((id): Finding[] => {
    const piece = pieceOf(after, id);
    if (!piece || !after.opened || !after.overlaid.includes(id)) {
      return [missing('overlaid/shown', { about: { piece: id } })];
    }
    const allowed = tolerance(spec, 'fit');
    return overlay(piece, after.opened, after.lines).flatMap((fit) => {
      const about = { piece: id, part: fit.part, ...(fit.residual > allowed.value && { edge: fit.worst! }) };
      const off = { code: 'traced-wrongly', amount: fit.residual, unit: 'mm' } as const;
      const cause = fit.mirrored ? { code: 'turned-over' } : off;
      const lost = fit.missing.length > 0;
      return [
        near('overlaid/fit', 'mm', fit.residual, 0, allowed, { about, cause }),
        ...(lost ? [fact('overlaid/coverage', false, { about: { ...about, edge: fit.missing[0]! } })] : []),
      ];
    });
  });
