import { shortSort } from '../geometry/short-sort.ts';
import { baseId } from './copy.ts';
import { edgeLength } from './edge-length.ts';
import { outlineOf } from './outline.ts';
import {
  byPlace,
  forward,
  type Fulled,
  LazyRun,
  type Seam,
  type SeamMark,
  type SeamRun,
} from './seam-run.ts';
import type { Edge, EdgeRole, Fullness, Piece, Side } from './types.ts';

const isBack = (p: Piece): boolean => p.id.startsWith('back');

/** A piece's part of a shoulder or side seam. `head`: 0 when it holds the neck or underarm end, 2 for the other end only. */
export interface Portion {
  readonly piece: Piece;
  readonly edges: readonly Edge[];
  readonly reversed: boolean;
  readonly head: number;
}

const isOf = (e: Edge, role: EdgeRole, side: Side | undefined): boolean =>
  e.role === role && (side === undefined || e.side === side);

/** A dart that was not closed, or its cap, still stands between the parts of its seam. */
const isDart = (e: Edge): boolean => e.role === 'dart-leg' || e.role === 'cap';

/** Index of the edge with which the seam begins in an outline, or −1. */
function firstOf(outline: readonly Edge[], role: EdgeRole, side: Side | undefined): number {
  let before = outline[outline.length - 1]!;
  for (let i = 0; i < outline.length; i++) {
    const e = outline[i]!;
    if (isOf(e, role, side) && !isOf(before, role, side) && !isDart(before)) return i;
    before = e;
  }
  return -1;
}

export function portionOf(piece: Piece, role: EdgeRole, side?: Side): Portion | undefined {
  const outline = outlineOf(piece);
  const n = outline.length;
  const first = firstOf(outline, role, side);
  if (first < 0) return undefined;
  const edges: Edge[] = [];
  let i = first;
  for (; edges.length < n; i++) {
    const e = outline[i % n]!;
    if (isOf(e, role, side)) edges.push(e);
    else if (!isDart(e)) break;
  }
  const before = outline[(first + n - 1) % n]!.role;
  const after = outline[i % n]!.role;
  const start = role === 'shoulder' ? 'neckline' : 'armhole';
  const end = role === 'shoulder' ? 'armhole' : 'waist';
  const reversed = after === start || (before === end && before !== start);
  return {
    piece,
    edges: reversed ? edges.reverse() : edges,
    reversed,
    head: before === start || after === start ? 0 : before === end || after === end ? 2 : 1,
  };
}

const byHead = (p: Portion, q: Portion): number => p.head - q.head;

/** The front's portions of a seam, in the order in which they are joined. */
export function frontPortions(pieces: readonly Piece[], role: EdgeRole, side: Side): Portion[] {
  const out: Portion[] = [];
  for (const piece of pieces) {
    const portion = isBack(piece) ? undefined : portionOf(piece, role, side);
    if (portion !== undefined) out.push(portion);
  }
  return shortSort(out, byHead);
}

function fullnessOf(all: readonly Fullness[], edge: string): Fullness | undefined {
  for (const f of all) if (f.edge === edge) return f;
  return undefined;
}

function idsOf(portions: readonly Portion[]): string[] {
  const ids: string[] = [];
  for (const p of portions) ids.push(p.piece.id);
  return ids;
}

function joinedRun(portions: readonly Portion[], eased?: SeamRun['eased']): SeamRun {
  const notches: SeamMark[] = [];
  const fulled: Fulled[] = [];
  let length = 0;
  for (const p of portions) {
    for (const e of p.edges) {
      const own = edgeLength(e);
      const full = p.piece.fullness && fullnessOf(p.piece.fullness, e.id);
      if (full !== undefined) fulled.push({ from: length, to: length + own, amount: full.fullness });
      for (const m of p.piece.notches) {
        if (m.edge === e.id && !m.ghost) {
          notches.push({ id: m.id, at: length + (p.reversed ? own - m.at : m.at) });
        }
      }
      length += own;
    }
  }
  return new LazyRun(
    { notches: shortSort(notches, byPlace), joints: [], openings: [], length, eased, fulled },
    idsOf(portions),
    () => portions.flatMap((p) => p.edges.map((e) => forward(e.chain, p.reversed))),
  );
}

/** What the portions measured on the block, before anything was redrawn. */
function drafted(portions: readonly Portion[]): number {
  let sum = 0;
  for (const p of portions) for (const e of p.edges) sum += Math.abs(e.origin.to - e.origin.from);
  return sum;
}

/** The back that is sewn to one side: the half that was trued for that side when there is one, else the half as drafted. */
export function backFor(set: readonly Piece[], side: Side): Piece | undefined {
  let whole: Piece | undefined;
  for (const p of set) {
    if (!isBack(p)) continue;
    const id = baseId(p.id);
    if (id === `back-${side}`) return p;
    if (id === 'back') whole ??= p;
  }
  return whole;
}

interface SeamName {
  readonly side: 'left' | 'right';
  readonly role: 'shoulder' | 'side';
}

/** 'right/shoulder' -> its side and role; undefined for a name that is no shoulder or side seam. */
export function seamName(name: string): SeamName | undefined {
  switch (name) {
    case 'right/shoulder':
      return { side: 'right', role: 'shoulder' };
    case 'left/shoulder':
      return { side: 'left', role: 'shoulder' };
    case 'right/side':
      return { side: 'right', role: 'side' };
    case 'left/side':
      return { side: 'left', role: 'side' };
    default:
      return undefined;
  }
}

/**
 * A shoulder or side seam: the front's portions joined as they are sewn, against the back. A back shoulder that the block
 * itself drafts longer carries that as ease.
 */
export function frontAndBack(fronts: readonly Piece[], back: Piece, name: string): Seam | undefined {
  const named = seamName(name);
  if (!named) return undefined;
  const portions = frontPortions(fronts, named.role, named.side);
  const own = portionOf(back, named.role);
  if (portions.length === 0 || !own) return undefined;
  const ease = named.role === 'shoulder' ? drafted([own]) - drafted(portions) : 0;
  const eased = ease > 0 ? { from: 'start', to: 'end', amount: ease } : undefined;
  return { a: joinedRun(portions), b: joinedRun([own], eased) };
}
