import { seamGroups, type SeamGroup } from '../../pattern/outline.ts';
import type { Piece } from '../../pattern/types.ts';
import type { Fabric } from '../../recipe/types.ts';
import { at, between, fact, missing, names, near, number, tolerance } from '../finding.ts';
import { isBack, piecesFor } from '../table.ts';
import type { Cause, Check, CheckSpec, Finding } from '../types.ts';

/** What decides about the width of a group: its kind of edge, the fabric where it is a plain seam. */
type Kind = 'style-line' | 'shoulder' | 'side' | 'neckline' | 'armhole' | 'waist' | 'other';
const KINDS: readonly Kind[] = ['style-line', 'shoulder', 'side', 'neckline', 'armhole', 'waist'];
/** Edges of these kinds are sewn to an edge of the same kind. */
const SEWN: readonly Kind[] = ['style-line', 'shoulder', 'side'];

const kindOf = (group: SeamGroup): Kind => KINDS.find((kind) => group.edges[0]!.role === kind) ?? 'other';

interface Cut {
  readonly piece: Piece;
  readonly groups: readonly SeamGroup[];
}

function rangeFor(kind: Kind, fabric: Fabric, spec: CheckSpec): readonly [number, number] {
  if (SEWN.includes(kind)) {
    const width = number(spec, fabric);
    return [width, width];
  }
  if (kind === 'neckline' || kind === 'armhole') return [number(spec, 'curve'), number(spec, 'curveMost')];
  return kind === 'waist'
    ? [number(spec, 'hemLeast'), number(spec, 'hemMost')]
    : [0, number(spec, 'hemMost')];
}

/** How near a width must come to half or double the wanted one to be taken for the other scale, mm. */
const SCALED = 1;

/** A width that is right but for a factor of two was meant for the other scale. */
function scaleMixed(width: number, range: readonly [number, number]): Cause | undefined {
  const fits = (value: number) => value >= range[0] - SCALED && value <= range[1] + SCALED;
  return range[0] > 0 && (fits(width * 2) || fits(width / 2)) ? { code: 'scale-mixed' } : undefined;
}

function widthOf(piece: Piece, group: SeamGroup, fabric: Fabric, spec: CheckSpec): Finding {
  const width = piece.allowances[group.id];
  const about = { piece: piece.id, group: group.id };
  const where = at(group.edges[0]!.chain[0]!.a);
  if (width === undefined) return missing('allowances/width', { where, about });
  const kind = kindOf(group);
  const range = rangeFor(kind, fabric, spec);
  const allowed = tolerance(spec, 'width');
  // A bound edge has no allowance at all; nothing lies between that and a width that can be sewn.
  const bound = (kind === 'neckline' || kind === 'armhole') && width === 0;
  const wanted = bound ? ([0, 0] as const) : range;
  const cause = () => scaleMixed(width, wanted);
  return between('allowances/width', 'mm', width, wanted, allowed, { where, about, cause });
}

/** All edges of one kind of seam carry one width; the finding is signed: the farthest from the first one met, less that. */
function partners(all: readonly Cut[], spec: CheckSpec): Finding[] {
  const allowed = tolerance(spec, 'partners');
  const findings: Finding[] = [];
  for (const kind of SEWN) {
    let first: number | undefined;
    let spread = 0;
    let whole = true;
    for (const { piece, groups } of all) {
      for (const group of groups) {
        if (group.edges[0]!.role !== kind) continue;
        const width = piece.allowances[group.id];
        if (width === undefined) whole = false;
        else if (first === undefined) first = width;
        else if (Math.abs(width - first) > Math.abs(spread)) spread = width - first;
      }
    }
    if (whole && first !== undefined) {
      findings.push(near('allowances/partners', 'mm', spread, 0, allowed, { about: { kind } }));
    }
  }
  return findings;
}

/** At both ends of the style line the corner is shaped for a seam that is pressed open, by the seam that is sewn first. */
function corners(piece: Piece, groups: readonly SeamGroup[]): Finding[] {
  const found: Finding[] = [];
  groups.forEach((group, i) => {
    const next = groups[(i + 1) % groups.length]!;
    if ((group.id === 'style-line') === (next.id === 'style-line')) return;
    const rule = piece.corners.find((corner) => corner.before === group.id && corner.after === next.id);
    const where = at(next.edges[0]!.chain[0]!.a);
    const about = { piece: piece.id, before: group.id, after: next.id, form: rule?.form ?? 'none' };
    if (!rule) found.push(missing('allowances/corner', { where, about }));
    else {
      const formed = rule.form === 'reflect' || rule.form === 'square';
      const first = rule.first === undefined || rule.first === 'style-line';
      const cause = { code: formed ? 'wrong-seam-first' : 'corner-not-flush' };
      found.push(fact('allowances/corner', formed && first, { where, about, cause }));
    }
  });
  return found;
}

/** What is left to treat: an allowance round an untreated seam is an allowance before truing. */
const untreated = (piece: Piece, groups: readonly SeamGroup[]): boolean =>
  groups.some((group) => group.edges[0]!.role === 'connector' || group.edges[0]!.role === 'dart-leg') ||
  piece.treatments.some((treatment) => treatment.kind === 'bridged');

/**
 * Step 11, on the pieces of the attempt's fabric: each seam group its width (`numbers`: `knit`, `woven`, `curve`, `curveMost`, `hemLeast`,
 * `hemMost`, mm), partners alike, the corners of the style line shaped, notches carried out, nothing before truing.
 * Tolerances `width`, `partners` in mm; `names.pieces` without the back.
 */
export const allowances: Check = ({ after, fabric }, spec) => {
  const wanted = names(spec, 'pieces');
  const all = piecesFor(after, fabric)
    .filter((piece) => isBack(piece) || wanted.includes(piece.id.split('@')[0]!))
    .map((piece) => ({ piece, groups: seamGroups(piece) }));
  const own = all.filter(({ piece }) => !isBack(piece));
  if (own.length < wanted.length) return [missing('allowances/pieces')];
  const findings: Finding[] = [];
  for (const { piece, groups } of own) {
    if (untreated(piece, groups)) {
      const early = Object.keys(piece.allowances).length > 0;
      const about = { piece: piece.id };
      findings.push(
        early ? fact('allowances/before-truing', false, { about }) : missing('allowances/pieces', { about }),
      );
    }
  }
  if (findings.length > 0) return findings;
  for (const { piece, groups } of all) {
    const seen = new Set<string>();
    for (const group of groups) {
      if (!seen.has(group.id)) findings.push(widthOf(piece, group, fabric, spec));
      seen.add(group.id);
    }
  }
  findings.push(...partners(all, spec));
  for (const { piece, groups } of own) {
    findings.push(...corners(piece, groups));
    if (!piece.notches.some((notch) => !notch.ghost)) continue;
    const about = { piece: piece.id };
    findings.push(
      piece.notchesCarried
        ? fact('allowances/notches', true, { about })
        : missing('allowances/notches', { about }),
    );
  }
  return findings;
};
