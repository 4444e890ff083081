import type { Work } from '../recipe/types.ts';
import { theMadeDart } from '../strings/names.ts';

/** The darts whose cap is drawn. */
const capped = (work: Work): readonly string[] =>
  work.pieces.flatMap(({ finished = [] }) => finished.filter(({ fold }) => fold).map(({ dart }) => dart));

/**
 * What is to be said when a change of the table took caps along: a cap belongs to the sewn point that it was drawn for. Empty when none
 * went.
 */
export function capGone(before: Work | undefined, after: Work | undefined): string {
  const left = after ? capped(after) : [];
  const gone = [...new Set(before && capped(before))].filter((dart) => !left.includes(dart));
  if (gone.length === 0) return '';
  return `The cap of ${gone.map(theMadeDart).join(' and ')} belonged to the legs as they were, and is gone with them. Draw it anew with “Folded cap”.`;
}
