import type { Piece } from '../../pattern/types.ts';
import { between, fact, missing, names, number } from '../finding.ts';
import { isBack, piecesFor } from '../table.ts';
import type { Check, Finding } from '../types.ts';

const nameOf = (piece: Piece): string => piece.label?.name.trim().toLowerCase() ?? '';

function labelOf(piece: Piece, names: readonly string[], most: number): Finding[] {
  const about = { piece: piece.id };
  const label = piece.label;
  if (!label) return [missing('labels/label', { about })];
  const name = nameOf(piece);
  const own = name !== '' && names.indexOf(name) === names.lastIndexOf(name);
  // A half back may be cut on the fold or as a pair; a front piece that is not symmetric is cut once, right side up.
  const count = isBack(piece) ? ([1, most] as const) : ([1, 1] as const);
  const findings = [
    fact('labels/name', own, { about: { ...about, name: label.name } }),
    between('labels/cut', 'count', label.cut, count, { value: 0, reason: 'cut-count' }, { about }),
  ];
  if (!isBack(piece)) findings.push(fact('labels/right-side-up', label.rightSideUp, { about }));
  return findings;
}

/** Step 12: each piece of the attempt's fabric (`names.pieces` and the back) is named, counted and says which side is up. */
export const labels: Check = ({ after, fabric }, spec) => {
  const wanted = names(spec, 'pieces');
  const set = piecesFor(after, fabric).filter((p) => isBack(p) || wanted.includes(p.id.split('@')[0]!));
  if (set.filter((piece) => !isBack(piece)).length < wanted.length) return [missing('labels/pieces')];
  const given = set.map(nameOf);
  return set.flatMap((piece) => labelOf(piece, given, number(spec, 'backCut')));
};
