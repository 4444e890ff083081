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
import type { Edge, EdgeRole, Piece, Side } from './types.ts';

const isBack = (p: Piece): boolean => p.id.startsWith('back');

/** A piece's part of a shoulder or side seam. `head`: 0 when it holds the neck or underarm end, 2 for the other end only. */
export interface Portion {
  readonly piece: Piece;
  readonly edges: readonly Edge[];
  readonly reversed: boolean;
  readonly head: number;
}

export function portionOf(piece: Piece, role: EdgeRole, side?: Side): Portion | undefined {
  const outline = outlineOf(piece);
  const n = outline.length;
  const mine = (e: Edge) => e.role === role && (side === undefined || e.side === side);
  // A dart that was not closed, or its cap, still stands between the parts of its seam.
  const within = (e: Edge) => mine(e) || e.role === 'dart-leg' || e.role === 'cap';
  const first = outline.findIndex((e, i) => mine(e) && !within(outline[(i + n - 1) % n]!));
  if (first < 0) return undefined;
  const edges: Edge[] = [];
  let i = first;
  for (; edges.length < n && within(outline[i % n]!); i++) {
    if (mine(outline[i % n]!)) edges.push(outline[i % n]!);
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

/** The front's portions of a seam, in the order in which they are joined. */
export function frontPortions(pieces: readonly Piece[], role: EdgeRole, side: Side): Portion[] {
  const out: Portion[] = [];
  for (const piece of pieces) {
    const portion = isBack(piece) ? undefined : portionOf(piece, role, side);
    if (portion !== undefined) out.push(portion);
  }
  return out.sort((p, q) => p.head - q.head);
}

function joinedRun(portions: readonly Portion[], eased?: SeamRun['eased']): SeamRun {
  const notches: SeamMark[] = [];
  const fulled: Fulled[] = [];
  let length = 0;
  for (const p of portions) {
    for (const e of p.edges) {
      const own = edgeLength(e);
      const full = p.piece.fullness?.find((f) => f.edge === e.id);
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
    { notches: notches.sort(byPlace), joints: [], openings: [], length, eased, fulled },
    portions.map((p) => p.piece.id),
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
export const backFor = (set: readonly Piece[], side: Side): Piece | undefined =>
  set.find((p) => baseId(p.id) === `back-${side}`) ?? set.find((p) => baseId(p.id) === 'back');

/** 'right/shoulder' -> its side and role; undefined for a name that is no shoulder or side seam. */
export function seamName(
  name: string,
): { readonly side: 'left' | 'right'; readonly role: 'shoulder' | 'side' } | undefined {
  const [side, role] = name.split('/');
  if ((side !== 'left' && side !== 'right') || (role !== 'shoulder' && role !== 'side')) return undefined;
  return { side, role };
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
