import { baseId } from '../../pattern/copy.ts';
import { seamGroups, type SeamGroup } from '../../pattern/outline.ts';
import type { CornerRule, Piece } from '../../pattern/types.ts';
import type { Fabric } from '../../recipe/types.ts';
import { at, between, fact, missing, names, near, number, tolerance } from '../finding.ts';
import { isBack, piecesFor } from '../table.ts';
import type { Cause, Check, CheckSpec, Finding } from '../types.ts';

/** What decides about the width of a group: its kind of edge, the fabric where it is a plain seam. */
type Kind = 'style-line' | 'shoulder' | 'side' | 'neckline' | 'armhole' | 'waist' | 'other';
/** Edges of these kinds are sewn to an edge of the same kind. */
const SEWN: readonly Kind[] = ['style-line', 'shoulder', 'side'];

function kindOf(group: SeamGroup): Kind {
  const { role } = group.edges[0]!;
  switch (role) {
    case 'style-line':
    case 'shoulder':
    case 'side':
    case 'neckline':
    case 'armhole':
    case 'waist':
      return role;
    default:
      return 'other';
  }
}

interface Cut {
  readonly piece: Piece;
  readonly groups: readonly SeamGroup[];
  /** Width of each group, mm, as far as it was given. */
  readonly widths: readonly (number | undefined)[];
}

function cutOf(piece: Piece): Cut {
  const groups = seamGroups(piece);
  const widths: (number | undefined)[] = [];
  for (const group of groups) widths.push(piece.allowances[group.id]);
  return { piece, groups, widths };
}

type Range = readonly [least: number, most: number];
const BOUND: Range = [0, 0];

/**
 * The width that an edge of a kind needs, mm: a bound edge has no allowance at all; nothing lies between that and what can be sewn. Edges may
 * be bound where a range of widths is asked for.
 */
function rangeFor(kind: Kind, width: number, fabric: Fabric, spec: CheckSpec, half: boolean): Range {
  switch (kind) {
    case 'style-line':
    case 'shoulder':
    case 'side': {
      const seam = number(spec, fabric);
      return [seam, seam];
    }
    case 'neckline':
    case 'armhole': {
      const [least, most] = [number(spec, 'curve'), number(spec, 'curveMost')];
      // Where one width is asked for, it is not left open whether the edge is bound.
      return width === 0 && least < most ? BOUND : [least, most];
    }
    case 'waist':
      return [number(spec, 'hemLeast'), number(spec, 'hemMost')];
    case 'other':
      return [half ? (spec.numbers?.['centreLeast'] ?? 0) : 0, number(spec, 'hemMost')];
  }
}

/** A half of the back that was trued by itself differs from the other one: its centre cannot lie on the fold. */
const isHalf = (piece: Piece): boolean => piece.id.startsWith('back-');

/** How near a width must come to half or double the wanted one to be taken for the other scale, mm. */
const SCALED = 1;

/** A width that is right but for a factor of two was meant for the other scale. */
function scaleMixed(width: number, range: readonly [number, number]): Cause | undefined {
  const fits = (value: number) => value >= range[0] - SCALED && value <= range[1] + SCALED;
  return range[0] > 0 && (fits(width * 2) || fits(width / 2)) ? { code: 'scale-mixed' } : undefined;
}

function widthOf({ piece, groups, widths }: Cut, i: number, fabric: Fabric, spec: CheckSpec): Finding {
  const group = groups[i]!;
  const width = widths[i];
  const about = { piece: piece.id, group: group.id };
  const where = at(group.edges[0]!.chain[0]!.a);
  if (width === undefined) return missing('allowances/width', { where, about });
  const wanted = rangeFor(kindOf(group), width, fabric, spec, isHalf(piece));
  const sewnCentre = isHalf(piece) && group.edges[0]!.role === 'centre-back';
  // Any width that can be sewn will do there: too narrow a one says nothing of scales.
  const cause = () =>
    sewnCentre ? (width === 0 ? { code: 'halves-differ' as const } : undefined) : scaleMixed(width, wanted);
  return between('allowances/width', 'mm', width, wanted, tolerance(spec, 'width'), { where, about, cause });
}

/** All edges of one kind of seam carry one width; the finding is signed: the farthest from the first one met, less that. */
function partners(all: readonly Cut[], spec: CheckSpec, findings: Finding[]): void {
  const allowed = tolerance(spec, 'partners');
  for (const kind of SEWN) {
    let first: number | undefined;
    let spread = 0;
    let whole = true;
    for (const { groups, widths } of all) {
      for (let i = 0; i < groups.length; i++) {
        if (groups[i]!.edges[0]!.role !== kind) continue;
        const width = widths[i];
        if (width === undefined) whole = false;
        else if (first === undefined) first = width;
        else if (Math.abs(width - first) > Math.abs(spread)) spread = width - first;
      }
    }
    if (whole && first !== undefined) {
      findings.push(near('allowances/partners', 'mm', spread, 0, allowed, { about: { kind } }));
    }
  }
}

/** What a piece says about the corner after one group and before the next. */
function ruleAt(piece: Piece, before: SeamGroup, after: SeamGroup): CornerRule | undefined {
  for (const rule of piece.corners) if (rule.before === before.id && rule.after === after.id) return rule;
  return undefined;
}

/** At both ends of the style line the corner is shaped for a seam that is pressed open, by the seam that is sewn first. */
function corners(piece: Piece, groups: readonly SeamGroup[], found: Finding[]): void {
  for (let i = 0; i < groups.length; i++) {
    const group = groups[i]!;
    const next = groups[i + 1 < groups.length ? i + 1 : 0]!;
    if ((group.id === 'style-line') === (next.id === 'style-line')) continue;
    const rule = ruleAt(piece, group, next);
    const where = at(next.edges[0]!.chain[0]!.a);
    const about = { piece: piece.id, before: group.id, after: next.id, form: rule?.form ?? 'none' };
    if (!rule) found.push(missing('allowances/corner', { where, about }));
    else {
      const formed = rule.form === 'reflect' || rule.form === 'square';
      const first = rule.first === undefined || rule.first === 'style-line';
      const cause = { code: formed ? 'wrong-seam-first' : 'corner-not-flush' };
      found.push(fact('allowances/corner', formed && first, { where, about, cause }));
    }
  }
}

/** What is left to treat: an allowance round an untreated seam is an allowance before truing. */
function untreated(piece: Piece, groups: readonly SeamGroup[]): boolean {
  for (const group of groups) {
    const { role } = group.edges[0]!;
    if (role === 'connector' || role === 'dart-leg') return true;
  }
  for (const treatment of piece.treatments) if (treatment.kind === 'bridged') return true;
  return false;
}

/** Whether a group of that name came before: a seam that is met twice is told once. */
function isRepeated(groups: readonly SeamGroup[], i: number): boolean {
  for (let k = 0; k < i; k++) if (groups[k]!.id === groups[i]!.id) return true;
  return false;
}

/** The pieces that are marked, with their groups, and how many of them are fronts. */
function cutFrom(
  set: readonly Piece[],
  wanted: readonly string[],
): { all: readonly Cut[]; own: readonly Cut[] } {
  const all: Cut[] = [];
  const own: Cut[] = [];
  for (const piece of set) {
    const back = isBack(piece);
    if (!back && !wanted.includes(baseId(piece.id))) continue;
    const cut = cutOf(piece);
    all.push(cut);
    if (!back) own.push(cut);
  }
  return { all, own };
}

function isNotched(piece: Piece): boolean {
  for (const notch of piece.notches) if (!notch.ghost) return true;
  return false;
}

/**
 * Step 11, on the pieces of the attempt's fabric: each seam group its width (`numbers`: `knit`, `woven`, `curve`, `curveMost`, `hemLeast`,
 * `hemMost`; `centreLeast` where halves of the back were trued each by itself, left out: 0; mm), partners alike, the corners of the style line shaped, notches carried out, nothing before truing.
 * Tolerances `width`, `partners` in mm; `names.pieces` without the back.
 */
export const allowances: Check = ({ after, fabric }, spec) => {
  const wanted = names(spec, 'pieces');
  const { all, own } = cutFrom(piecesFor(after, fabric), wanted);
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
  for (const cut of all) {
    for (let i = 0; i < cut.groups.length; i++) {
      if (!isRepeated(cut.groups, i)) findings.push(widthOf(cut, i, fabric, spec));
    }
  }
  partners(all, spec, findings);
  for (const { piece, groups } of own) {
    corners(piece, groups, findings);
    if (!isNotched(piece)) continue;
    const about = { piece: piece.id };
    findings.push(
      piece.notchesCarried
        ? fact('allowances/notches', true, { about })
        : missing('allowances/notches', { about }),
    );
  }
  return findings;
};
