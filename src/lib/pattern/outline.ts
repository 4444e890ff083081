import type { Dart, Edge, Piece } from './types.ts';
import { distance, samePoint } from '../geometry/point.ts';
import { line } from '../geometry/segment.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { findDart, legIds, partOf, startAt } from './look-up.ts';
import { withEdge } from './with.ts';
export * from './look-up.ts';

/** A gap this small (mm) between two edges is rounding and is closed by moving a start point. */
const WELD = 1e-6;

/** Closes the joint after `edges`: welds rounding, and shows a real gap as a straight edge of its own. */
function join(edges: Edge[], next: Edge, dart: string): void {
  const last = edges[edges.length - 1]!;
  const end = chainEnd(last.chain);
  const start = chainStart(next.chain);
  if (samePoint(end, start)) {
    edges.push(next);
  } else if (distance(end, start) <= WELD) {
    edges.push(withEdge(next, { chain: startAt(next.chain, end) }));
  } else {
    const id = `gap/${dart}/${edges.some((e) => e.id === `gap/${dart}/1`) ? 2 : 1}`;
    const origin = { edge: id, from: 0, to: distance(end, start) };
    const chain = [line(end, start)];
    edges.push({ id, role: 'dart-leg', side: next.side, chain, origin, partner: undefined, dart }, next);
  }
}

/** The loop closed at its joint: from its last edge to its first. */
function closed(loop: Edge[], dart: string): readonly Edge[] {
  const first = loop.shift()!;
  join(loop, first, dart);
  loop.unshift(loop.pop()!);
  return loop;
}

/**
 * The darts at which sheets are joined, in order. Sheets that meet round one point are joined at all darts but one, which are
 * more than there are hinges: then closed ones come first, so that the one left over is open.
 */
function joints(piece: Piece): readonly Dart[] {
  const hinged: Dart[] = [];
  for (const h of piece.hinges) {
    const dart = findDart(piece, h.dart);
    if (dart !== undefined) hinged.push(dart);
  }
  const more: Dart[] = [];
  for (const d of piece.darts)
    if (!hinged.includes(d) && partOf(piece, d.upper) !== partOf(piece, d.lower)) more.push(d);
  if (more.length === 0) return hinged;
  const all = [...hinged, ...more];
  return [...all.filter((d) => d.state === 'closed'), ...all.filter((d) => d.state !== 'closed')];
}

/**
 * The piece's outline as it lies, clockwise on the screen: the treated seam outline if there is one; else the outlines of
 * the parts joined round their hinges, without the taped legs of closed darts. At a hinge it may touch itself: every open dart is a notch
 * in it that reaches the point in which the sheets hang together.
 */
export function outlineOf(piece: Piece): readonly Edge[] {
  if (piece.seam !== undefined) return piece.seam;
  if (piece.hinges.length === 0) return piece.parts[0]!.edges;
  for (const k of known)
    if (k.parts === piece.parts && k.darts === piece.darts && k.hinges === piece.hinges) return k.outline;
  const { parts, darts, hinges } = piece;
  const outline = joined(piece);
  known[oldest] = { parts, darts, hinges, outline };
  oldest = (oldest + 1) % known.length;
  return outline;
}

/** An outline, and all that it follows from. */
interface Known extends Pick<Piece, 'parts' | 'darts' | 'hinges'> {
  readonly outline: readonly Edge[];
}

// These lists never change, pieces and their copies share them, and every step asks for the outline: the last ones are kept.
const known: Known[] = [];
for (let i = 0; i < 4; i++) known.push({ parts: [], darts: [], hinges: [], outline: [] });
let oldest = 0;

/** Where the edge of that id is in the outlines: which one, and its place there. */
function placeOf(
  loops: readonly (readonly Edge[])[],
  id: string,
): readonly [readonly Edge[], number] | undefined {
  for (const loop of loops) for (let i = 0; i < loop.length; i++) if (loop[i]!.id === id) return [loop, i];
  return undefined;
}

function joined(piece: Piece): readonly Edge[] {
  let loops: (readonly Edge[])[] = piece.parts.map((p) => p.edges);
  for (const dart of joints(piece)) {
    const [into, outOf] = legIds(dart);
    const one = placeOf(loops, into);
    const other = placeOf(loops, outOf);
    if (one === undefined || other === undefined) continue;
    const [x, i] = one;
    const [y, j] = other;
    const taped = dart.state === 'closed';
    let merged: readonly Edge[];
    if (x === y) {
      // Joined already by the other darts round the point: an open one stays as it is, taped legs go.
      if (!taped || j !== (i + 1) % x.length) continue;
      merged = closed(j > i ? [...x.slice(j + 1), ...x.slice(0, i)] : x.slice(1, i), dart.id);
    } else {
      const both: Edge[] = [...x.slice(i + 1), ...x.slice(0, taped ? i : i + 1)];
      const freed = [...y.slice(taped ? j + 1 : j), ...y.slice(0, j)];
      join(both, freed[0]!, dart.id);
      for (let k = 1; k < freed.length; k++) both.push(freed[k]!);
      merged = closed(both, dart.id);
    }
    const rest = loops.filter((l) => l !== x && l !== y);
    loops = [merged, ...rest];
  }
  return loops[0]!;
}

export interface SeamGroup {
  readonly id: string;
  readonly edges: readonly Edge[];
}

/** The seam group of an edge: the name under which widths, corners and walks refer to it. */
export function groupOf(edge: Edge): string {
  switch (edge.role) {
    case 'style-line':
    case 'neckline':
    case 'waist':
    case 'centre-front':
    case 'centre-back':
      return edge.role;
    case 'dart-leg':
      return `dart/${edge.dart ?? edge.id}`;
    case 'connector':
      return `connector/${edge.dart ?? edge.id}`;
    case 'cap':
      return edge.id.slice(0, edge.id.indexOf('/cap-'));
    default:
      return namedAfter(edge);
  }
}

// The few names that are put together from an edge's side and role: each is made once, and so is the same string wherever it is
// looked up.
const made: { readonly role: string; readonly start: string; readonly name: string }[] = [];

function namedAfter({ id, role }: Edge): string {
  for (const m of made) if (m.role === role && id.startsWith(m.start)) return m.name;
  const start = id.slice(0, id.indexOf('/') + 1);
  const name = `${id.slice(0, id.indexOf('/'))}/${role}`;
  if (start !== '') made.push({ role, start, name });
  return name;
}

/** Consecutive outline edges of one role and side, in outline order, starting where a group starts. */
export function seamGroups(piece: Piece): readonly SeamGroup[] {
  const edges = outlineOf(piece);
  for (const known of grouped) if (known.edges === edges) return known.groups;
  const groups = groupsIn(edges);
  grouped[next] = { edges, groups };
  next = (next + 1) % grouped.length;
  return groups;
}

// An outline never changes, and each width and corner of a piece asks for its groups: those of the last set of pieces are kept.
const NONE: readonly Edge[] = [];
const grouped: { readonly edges: readonly Edge[]; readonly groups: readonly SeamGroup[] }[] = [];
for (let i = 0; i < 5; i++) grouped.push({ edges: NONE, groups: [] });
let next = 0;

function groupsIn(edges: readonly Edge[]): readonly SeamGroup[] {
  const n = edges.length;
  const ids = edges.map(groupOf);
  let start = 0;
  while (start < n && ids[start] === ids[(start + n - 1) % n]) start++;
  if (start === n) return [{ id: ids[0]!, edges }];
  const groups: { id: string; edges: Edge[] }[] = [];
  for (let k = 0; k < n; k++) {
    const i = (start + k) % n;
    const last = k > 0 ? groups[groups.length - 1] : undefined;
    if (last !== undefined && last.id === ids[i]) last.edges.push(edges[i]!);
    else groups.push({ id: ids[i]!, edges: [edges[i]!] });
  }
  return groups;
}
