import { baseId } from '../../pattern/copy.ts';
import type { Piece } from '../../pattern/types.ts';
import { between, fact, missing, names, number } from '../finding.ts';
import { isBack, piecesFor } from '../table.ts';
import type { Check, Finding } from '../types.ts';

const nameOf = (piece: Piece): string => piece.label?.name.trim().toLowerCase() ?? '';

/** A half back may be cut on the fold or as a pair, until one half of it was trued by itself. */
const isPair = (piece: Piece, set: readonly Piece[]): boolean =>
  isBack(piece) && !set.some((other) => other.id.startsWith('back-'));

/** Whether a piece has a name, and no other piece has it. */
function isOwn(i: number, all: readonly string[]): boolean {
  if (all[i] === '') return false;
  for (let k = 0; k < all.length; k++) if (k !== i && all[k] === all[i]) return false;
  return true;
}

const ONCE = [1, 1] as const;
const EXACT = { value: 0, reason: 'cut-count' };

function labelOf(piece: Piece, own: boolean, paired: boolean, most: number, findings: Finding[]): void {
  const about = { piece: piece.id };
  const label = piece.label;
  if (!label) {
    findings.push(missing('labels/label', { about }));
    return;
  }
  // What has no second half is cut once, right side up.
  const count = paired ? ([1, most] as const) : ONCE;
  findings.push(
    fact('labels/name', own, { about: { piece: piece.id, name: label.name } }),
    between('labels/cut', 'count', label.cut, count, EXACT, { about }),
  );
  if (!paired) findings.push(fact('labels/right-side-up', label.rightSideUp, { about }));
}

/** Step 12: each piece of the attempt's fabric (`names.pieces` and the back) is named, counted and says which side is up where it matters. */
export const labels: Check = ({ after, fabric }, spec) => {
  const wanted = names(spec, 'pieces');
  const set: Piece[] = [];
  let fronts = 0;
  for (const piece of piecesFor(after, fabric)) {
    const back = isBack(piece);
    if (!back && !wanted.includes(baseId(piece.id))) continue;
    set.push(piece);
    if (!back) fronts += 1;
  }
  if (fronts < wanted.length) return [missing('labels/pieces')];
  const findings: Finding[] = [];
  const all: string[] = [];
  for (const piece of set) all.push(nameOf(piece));
  const most = number(spec, 'backCut');
  for (let i = 0; i < set.length; i++) labelOf(set[i]!, isOwn(i, all), isPair(set[i]!, set), most, findings);
  return findings;
};
