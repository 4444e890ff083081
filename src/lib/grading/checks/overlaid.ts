import { overlay } from '../../pattern/overlay.ts';
import { fact, missing, names, near, tolerance } from '../finding.ts';
import { pieceOf } from '../table.ts';
import type { Check, Finding } from '../types.ts';

/**
 * Step 9: both pieces (`names.pieces`) were closed and laid on the block, and each rigid part, registered by its final outline, lies on
 * the block edge on edge. Tolerance `fit` in mm, on the largest distance of an edge from where it lay.
 */
export const overlaid: Check = ({ after }, spec) => {
  const findings: Finding[] = [];
  for (const id of names(spec, 'pieces')) {
    const piece = pieceOf(after, id);
    if (!piece || !after.opened || !after.overlaid.includes(id)) {
      findings.push(missing('overlaid/shown', { about: { piece: id } }));
      continue;
    }
    const allowed = tolerance(spec, 'fit');
    for (const fit of overlay(piece, after.opened, after.lines)) {
      const { part, residual, worst } = fit;
      const off = residual > allowed.value && worst !== undefined;
      const about = off ? { piece: id, part, edge: worst } : { piece: id, part };
      const cause = () =>
        fit.mirrored
          ? { code: 'turned-over' }
          : ({ code: 'traced-wrongly', amount: residual, unit: 'mm' } as const);
      findings.push(near('overlaid/fit', 'mm', residual, 0, allowed, { about, cause }));
      const [lost] = fit.missing;
      if (lost !== undefined)
        findings.push(fact('overlaid/coverage', false, { about: { piece: id, part, edge: lost } }));
    }
  }
  return findings;
};
