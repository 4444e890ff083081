import type { Piece } from '../../pattern/types.ts';
import { between, fact, missing, names, number } from '../finding.ts';
import { isBack, piecesFor } from '../table.ts';
import type { Check, Finding } from '../types.ts';

const nameOf = (piece: Piece): string => piece.label?.name.trim().toLowerCase() ?? '';

/** A half back may be cut on the fold or as a pair, until one half of it was trued by itself. */
const isPair = (piece: Piece, set: readonly Piece[]): boolean =>
  isBack(piece) && !set.some((other) => other.id.startsWith('back-'));

function labelOf(piece: Piece, set: readonly Piece[], most: number): Finding[] {
  const about = { piece: piece.id };
  const label = piece.label;
  if (!label) return [missing('labels/label', { about })];
  const name = nameOf(piece);
  const own = name !== '' && set.every((other) => other === piece || nameOf(other) !== name);
  // What has no second half is cut once, right side up.
  const paired = isPair(piece, set);
  const count = paired ? ([1, most] as const) : ([1, 1] as const);
  const findings = [
    fact('labels/name', own, { about: { ...about, name: label.name } }),
    between('labels/cut', 'count', label.cut, count, { value: 0, reason: 'cut-count' }, { about }),
  ];
  if (!paired) findings.push(fact('labels/right-side-up', label.rightSideUp, { about }));
  return findings;
}

/** Step 12: each piece of the attempt's fabric (`names.pieces` and the back) is named, counted and says which side is up where it matters. */
export const labels: Check = ({ after, fabric }, spec) => {
  const wanted = names(spec, 'pieces');
  const set = piecesFor(after, fabric).filter((p) => isBack(p) || wanted.includes(p.id.split('@')[0]!));
  if (set.filter((piece) => !isBack(piece)).length < wanted.length) return [missing('labels/pieces')];
  return set.flatMap((piece) => labelOf(piece, set, number(spec, 'backCut')));
};
