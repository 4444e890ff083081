import { baseId } from '../../pattern/copy.ts';
import { centreGroup, onFold } from '../../pattern/centre.ts';
import type { Piece } from '../../pattern/types.ts';
import { between, fact, missing, names, number } from '../finding.ts';
import { isBack, piecesFor } from '../table.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

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

const asksFold = (spec: CheckSpec): boolean => spec.names?.['fold'] !== undefined;

/** How often a half back may be cut: once on the fold of the cloth, or as a pair that is sewn at its centre. */
function pairCount(piece: Piece, spec: CheckSpec): readonly [number, number] {
  const most = number(spec, 'backCut');
  if (asksFold(spec) && (onFold(piece) || piece.label?.onFold)) return ONCE;
  return [isSeam(piece) ? (spec.numbers?.['backCutAtSeam'] ?? 1) : 1, most];
}

/** Whether the centre edge of a piece was given an allowance: it is sewn. */
function isSeam(piece: Piece): boolean {
  const centre = centreGroup(piece);
  return centre !== undefined && (piece.allowances[centre] ?? 0) > 0;
}

/** A piece says that it is laid on the fold where its centre has no allowance, and nowhere else. Where neither is so, nothing is found. */
function foldOf(piece: Piece, paired: boolean, findings: Finding[]): void {
  const about = { piece: piece.id };
  const says = piece.label?.onFold === true;
  if (paired && onFold(piece)) findings.push(fact('labels/on-fold', says, { about }));
  else if (says && (!paired || isSeam(piece))) {
    const cause = { code: paired ? 'centre-is-sewn' : 'no-second-half' };
    findings.push(fact('labels/on-fold', false, { about, cause }));
  }
}

function labelOf(piece: Piece, own: boolean, paired: boolean, spec: CheckSpec, findings: Finding[]): void {
  const about = { piece: piece.id };
  const label = piece.label;
  if (!label) {
    findings.push(missing('labels/label', { about }));
    return;
  }
  // What has no second half is cut once, right side up.
  const count = paired ? pairCount(piece, spec) : ONCE;
  findings.push(
    fact('labels/name', own, { about: { piece: piece.id, name: label.name } }),
    between('labels/cut', 'count', label.cut, count, EXACT, { about }),
  );
  if (!paired) findings.push(fact('labels/right-side-up', label.rightSideUp, { about }));
  if (asksFold(spec)) foldOf(piece, paired, findings);
}

/**
 * Step 12: each piece of the attempt's fabric (`names.pieces` and the back) is named, counted and says which side is up where it matters.
 * `numbers.backCut`: how often a half back is cut at most; `backCutAtSeam`: at least, where its centre is a seam (left out: once). With
 * `names.fold` a half back whose centre has no allowance is cut once, and its label says that it lies on the fold.
 */
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
  for (let i = 0; i < set.length; i++) labelOf(set[i]!, isOwn(i, all), isPair(set[i]!, set), spec, findings);
  return findings;
};
