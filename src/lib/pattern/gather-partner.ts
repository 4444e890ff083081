import { baseId, suffixOf } from './copy.ts';
import { edgeLength } from './edge-length.ts';
import { backFor, frontAndBack, portionOf } from './front-back.ts';
import { outlineOf } from './outline.ts';
import type { SeamMarks } from './seam-run.ts';
import type { Edge, EdgeNotch, Fullness, Piece } from './types.ts';
import { withPiece } from './with.ts';

/** More than this (mm) between the two sides of a seam and they do not belong together yet (acceptable seam, trade notes, read). */
const TOGETHER = 3.2;

/**
 * The back with the notches between which the front's fullness is gathered, eased or tucked: at the places that the front's two notches
 * come to on the sewn seam, shared out by length where the block drafts the back longer. undefined where nothing is sewn to the edge (a
 * neckline, an armhole), where the two sides are not of one length yet, and where the half back serves both halves of the front
 * but only one of them is full.
 */
export function backWithGatherNotches(
  pieces: readonly Piece[],
  front: Piece,
  record: Fullness,
): Piece | undefined {
  const edge = outlineOf(front).find(({ id }) => id === record.edge);
  if (edge === undefined || (edge.role !== 'shoulder' && edge.role !== 'side')) return undefined;
  const { role, side } = edge;
  if (side !== 'left' && side !== 'right') return undefined;
  const set = pieces.filter(({ id }) => suffixOf(id) === suffixOf(front.id));
  const fronts = set.filter(({ id }) => !id.startsWith('back'));
  const back = backFor(set, side);
  const other = fronts.some((p) => outlineOf(p).some((e) => e.role === role && e.side !== side));
  if (back === undefined || (baseId(back.id) === 'back' && other)) return undefined;
  const seam = frontAndBack(fronts, back, `${side}/${role}`);
  const portion = portionOf(back, role);
  if (seam === undefined || portion === undefined) return undefined;

  const sewn = sewnTo(seam.a, seam.a.length);
  const ease = seam.b.eased?.amount ?? 0;
  if (Math.abs(sewn + ease - seam.b.length) > TOGETHER) return undefined;
  const own = front.notches.filter((m) => m.edge === record.edge && !m.ghost).map(({ id }) => id);
  const made = seam.a.notches
    .filter(({ id }) => own.includes(id))
    .map(({ id, at }) => {
      const along = (sewnTo(seam.a, at) * seam.b.length) / sewn;
      return { id, ghost: undefined, ...placeOn(portion.edges, portion.reversed, along) };
    });
  const kept = back.notches.filter((m) => !own.includes(m.id));
  return withPiece(back, { notches: [...kept, ...made] });
}

/** How far along the sewn seam a place of the cut edge comes to, mm: what is gathered before it takes up no length. */
function sewnTo({ fulled = [] }: SeamMarks, at: number): number {
  let sum = at;
  for (const { from, to, amount } of fulled)
    sum -= (amount * Math.max(0, Math.min(at, to) - from)) / (to - from);
  return sum;
}

/** The place `along` mm on edges in the order of the seam. */
function placeOn(
  edges: readonly Edge[],
  reversed: boolean,
  along: number,
): Pick<EdgeNotch, 'edge' | 'line' | 'at'> {
  let before = 0;
  for (const [i, e] of edges.entries()) {
    const length = edgeLength(e);
    if (along <= before + length || i === edges.length - 1) {
      const at = Math.min(length, along - before);
      return { edge: e.id, line: e.id, at: reversed ? length - at : at };
    }
    before += length;
  }
  throw new RangeError('a seam has an edge');
}
