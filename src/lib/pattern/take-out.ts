import { chainEnd, chainStart } from '../geometry/chain.ts';
import { subchain } from '../geometry/subchain.ts';
import { distance } from '../geometry/point.ts';
import { line as straight } from '../geometry/segment.ts';
import { edgeLength } from './edge-length.ts';
import { done, refuse, type Outcome } from './outcome.ts';
import { seamExcess } from './openings.ts';
import { bankOf, bridgedSeam, bridgeId, treatmentOf, withTreatment } from './style-seam.ts';
import type { Edge, EdgeNotch, Piece } from './types.ts';
import { withEdge } from './with.ts';
import { withNotch } from './with-marks.ts';

/** What must be left of an edge, mm. */
const LEAST = 1e-3;

/**
 * Take a bridged excess out at one end of the seam: `amount` mm of arc length go from the seam's `start` or `end` (as the line
 * was drawn), and the edges that the end stands on (all of the same role and side in a row) are redrawn as one straight edge
 * from their far end to the new corner. 'measured' takes the excess over `partner` as it lies there.
 *
 * The redrawn edge keeps the id of the first of its group, and as origin what the whole group measured. Notches stay where
 * they stand on the cloth: those between the bridge and the trimmed end have to be marked again (`renotch`).
 */
export function takeOut(
  piece: Piece,
  dart: string,
  end: 'start' | 'end',
  amount: 'measured' | number,
  partner: Piece,
): Outcome<Piece> {
  const treatment = treatmentOf(piece, dart);
  const found = bridgedSeam(piece, dart);
  if (treatment === undefined || found === undefined) return refuse('not-bridged', { dart });
  if (treatment.kind !== 'bridged') return refuse('already-treated', { dart, as: treatment.kind });
  const cut = amount === 'measured' ? (seamExcess(piece, partner, dart) ?? treatment.excess) : amount;
  if (!(cut > 0)) return refuse('nothing-to-take-out', { dart, amount: cut });

  const { seam } = found;
  const { outline, first, count } = seam;
  const n = outline.length;
  // Turned so that the seam comes first.
  const edges = [...outline.slice(first), ...outline.slice(0, first)];
  const atHead = (end === 'start') === (seam.bank === 'b');
  const step = atHead ? 1 : -1;

  let edge = atHead ? 0 : count - 1;
  let left = cut;
  let length = edgeLength(edges[edge]!);
  const dropped: { readonly id: string; readonly length: number }[] = [];
  while (left > length - LEAST) {
    const next = edges[edge + step];
    if (next === undefined || next.id === bridgeId(dart) || next.role !== 'style-line') {
      return refuse('take-out-too-long', { amount: cut, room: cut - left + length });
    }
    dropped.push({ id: edges[edge]!.id, length });
    left -= length;
    edge += step;
    length = edgeLength(edges[edge]!);
  }
  const old = edges[edge]!;
  const chain = atHead ? subchain(old.chain, left, length) : subchain(old.chain, 0, length - left);
  const corner = atHead ? chainStart(chain) : chainEnd(chain);

  const beside = edges[atHead ? n - 1 : count]!;
  const same = (e: Edge) => e.role === beside.role && e.side === beside.side;
  let from = atHead ? n - 1 : count;
  let to = from;
  if (atHead) while (from - 1 >= count && same(edges[from - 1]!)) from--;
  else while (to + 1 < n && same(edges[to + 1]!)) to++;
  const group = edges.slice(from, to + 1);
  const far = atHead ? chainStart(group[0]!.chain) : chainEnd(group[group.length - 1]!.chain);
  if (!(distance(far, corner) > LEAST)) return refuse('take-out-too-long', { amount: cut, room: cut });
  const span = group.reduce((sum, e) => sum + e.origin.to - e.origin.from, 0);
  const { origin } = group[0]!;
  const redrawn: Edge = withEdge(group[0]!, {
    chain: [atHead ? straight(far, corner) : straight(corner, far)],
    origin: { edge: origin.edge, from: origin.from, to: origin.from + span },
  });
  const trimmed: Edge = withEdge(old, { chain, origin: trimOrigin(old, left, atHead) });

  const next: Edge[] = [];
  for (let i = 0; i < n; i++) {
    const e = edges[i]!;
    if (e === old) next.push(trimmed);
    else if (i === from) next.push(redrawn);
    else if (!(i > from && i <= to) && !dropped.some((d) => d.id === e.id)) next.push(e);
  }
  const notches = piece.notches.map((m) => moved(m, old.id, left, dropped, length, atHead, group));
  const { excess, bridge, eased } = treatment;
  return done(
    withTreatment(piece, { dart, kind: 'trimmed', excess, bridge, eased, trimmedEnd: end }, next, notches),
  );
}

/** The stretch of the line that is left; `mm` went at the chain's head or tail. */
function trimOrigin(edge: Edge, mm: number, atHead: boolean): Edge['origin'] {
  const { edge: parent, from, to } = edge.origin;
  // The origin counts along the line, the chain of bank a runs against it.
  return atHead === (bankOf(edge) === 'a')
    ? { edge: parent, from, to: to - mm }
    : { edge: parent, from: from + mm, to };
}

/** A notch counted from where its edge now begins. One that was cut off keeps its distance from the opening: it lies off the edge. */
function moved(
  m: EdgeNotch,
  old: string,
  left: number,
  dropped: readonly { readonly id: string; readonly length: number }[],
  length: number,
  atHead: boolean,
  group: readonly Edge[],
): EdgeNotch {
  if (m.edge === old) return atHead ? withNotch(m, { at: m.at - left }) : m;
  const k = dropped.findIndex((d) => d.id === m.edge);
  if (k >= 0) {
    let between = 0;
    for (let i = k + 1; i < dropped.length; i++) between += dropped[i]!.length;
    const at = atHead ? m.at - dropped[k]!.length - between - left : length + between + m.at;
    return withNotch(m, { edge: old, at });
  }
  const g = group.findIndex((e) => e.id === m.edge);
  if (g <= 0) return m;
  let at = m.at;
  for (let i = 0; i < g; i++) at += edgeLength(group[i]!);
  return withNotch(m, { edge: group[0]!.id, at });
}
