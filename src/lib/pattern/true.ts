import { chainEnd, chainStart } from '../geometry/chain.ts';
import { mirrorChain, reverseChain, transformChain } from '../geometry/chain-moved.ts';
import { subchain } from '../geometry/subchain.ts';
import { applyTo, compose, reflectionAcross } from '../geometry/isometry.ts';
import { add, scale, sub, unit } from '../geometry/point.ts';
import { cubic, line, tangentAt } from '../geometry/segment.ts';
import type { Chain, Isometry, Point, Segment } from '../geometry/types.ts';
import { baseId, suffixOf } from './copy.ts';
import { edgeLength } from './edge-length.ts';
import { outlineOf } from './outline.ts';
import { done, refuse, type Outcome } from './outcome.ts';
import { frontAndBack, seamName } from './front-back.ts';
import type { Edge, Part, Piece, Side } from './types.ts';
import { openPart, openPiece, withEdge } from './with.ts';
import { withLine, withNotch } from './with-marks.ts';

/**
 * True the back's edge ('right/shoulder', 'left/side' ...) to the front as it will be sewn: the front's portions joined, and
 * for the shoulder the ease that the block itself drafts into the back (`ease` mm when given). The back's shoulder point, or
 * its underarm corner for a side, moves along the edge's own line until the lengths agree; the armhole's end goes with it, control
 * point and all, so that it leaves the corner as it did.
 *
 * The back is drafted once, as a half. Once one side of the front differs from the other the two halves of the back differ
 * too, so the trued half is a piece of its own: `back-right` as drafted, `back-left` mirrored across centre back (a copy's
 * suffix stays: `back-left@woven`). Given such a half, the same piece comes back trued further.
 */
export function trueBack(back: Piece, name: string, fronts: readonly Piece[], ease?: number): Outcome<Piece> {
  const seam = frontAndBack(fronts, back, name);
  const named = seamName(name);
  if (!seam || !named) return refuse('no-such-seam', { seam: name });
  const { side, role } = named;
  const target = seam.a.length + (ease ?? seam.b.eased?.amount ?? 0);
  if (!(target > 1)) return refuse('bad-number', { length: target });
  const half = halfFor(back, side);
  if (!half) return refuse('wrong-back', { piece: back.id, seam: name });
  const outline = outlineOf(half);
  const n = outline.length;
  const mine = (e: Edge | undefined) => e?.role === role;
  const first = outline.findIndex((e, i) => mine(e) && !mine(outline[(i + n - 1) % n]));
  let last = first;
  while (mine(outline[(last + 1) % n]) && last - first < n) last++;
  // The corner that moves is the one at the armhole.
  const atTail = outline[(last + 1) % n]!.role === 'armhole';
  if (!atTail && outline[(first + n - 1) % n]!.role !== 'armhole')
    return refuse('no-armhole', { piece: back.id });
  const moving = (atTail ? last : first) % n;
  const neighbour = atTail ? (last + 1) % n : (first + n - 1) % n;
  const edge = outline[moving]!;
  const own = edgeLength(edge);
  const wanted = own + target - seam.b.length;
  if (!(wanted > 1)) return refuse('bad-number', { length: wanted });
  const chain = atTail
    ? resized(edge.chain, own, wanted)
    : reverseChain(resized(reverseChain(edge.chain), own, wanted));
  const corner = atTail ? chainEnd(chain) : chainStart(chain);
  const armhole = outline[neighbour]!;
  const joined = atTail
    ? withStart(armhole.chain, corner)
    : reverseChain(withStart(reverseChain(armhole.chain), corner));
  const edges: Edge[] = outline.slice();
  edges[moving] = withEdge(edge, { chain });
  edges[neighbour] = withEdge(armhole, { chain: joined });
  const next = openPiece(half);
  next.seam = edges;
  return done(next);
}

/** The chain cut or drawn out at its end to `wanted` mm; `own` is its length. */
function resized(chain: Chain, own: number, wanted: number): Chain {
  if (wanted === own) return chain;
  const final = chain[chain.length - 1]!;
  if (chain.length === 1 && final.kind === 'line') {
    return [line(final.a, add(final.a, scale(unit(sub(final.d, final.a)), wanted)))];
  }
  if (wanted < own) return subchain(chain, 0, wanted);
  const end = add(final.d, scale(tangentAt(final, 1), wanted - own));
  return final.kind === 'line' ? [...chain.slice(0, -1), line(final.a, end)] : [...chain, line(final.d, end)];
}

/** The chain with its start moved to p; a curve's first control point goes along. */
function withStart(chain: Chain, p: Point): Chain {
  const s = chain[0]!;
  const head: Segment = s.kind === 'line' ? line(p, s.d) : cubic(p, add(s.b, sub(p, s.a)), s.c, s.d);
  return [head, ...chain.slice(1)];
}

function halfFor(back: Piece, side: Side): Piece | undefined {
  const base = baseId(back.id);
  if (base === `back-${side}`) return back;
  if (base !== 'back') return undefined;
  const id = `back-${side}${suffixOf(back.id)}`;
  const half = openPiece(back);
  half.id = id;
  return side === 'left' ? mirrored(half) : half;
}

function reflected(landmarks: Part['landmarks'], m: Isometry): Part['landmarks'] {
  const out: Record<string, Point> = { ...landmarks };
  for (const id in out) out[id] = applyTo(m, out[id]!);
  return out;
}

/** The other half: mirrored across centre back, every chain turned round so that the outline still runs clockwise. */
function mirrored(piece: Piece): Piece {
  const centre = outlineOf(piece).find((e) => e.role === 'centre-back');
  if (!centre) return piece;
  const m = reflectionAcross(chainStart(centre.chain), chainEnd(centre.chain));
  const flip = (e: Edge): Edge =>
    withEdge(e, {
      side: e.side === 'right' ? 'left' : e.side === 'left' ? 'right' : e.side,
      chain: mirrorChain(e.chain, m),
    });
  const turn = (edges: readonly Edge[]) => edges.map((_, i) => flip(edges[edges.length - 1 - i]!));
  const next = openPiece(piece);
  next.parts = piece.parts.map((part): Part => {
    const sheet = openPart(part);
    sheet.edges = turn(part.edges);
    sheet.lines = part.lines.map((l) => withLine(l, { chain: transformChain(l.chain, m) }));
    sheet.landmarks = reflected(part.landmarks, m);
    sheet.motion = compose(m, part.motion);
    return sheet;
  });
  next.seam = piece.seam && turn(piece.seam);
  const outline = outlineOf(piece);
  next.notches = piece.notches.map((k) => {
    const edge = outline.find((e) => e.id === k.edge);
    return withNotch(k, { at: (edge === undefined ? 0 : edgeLength(edge)) - k.at });
  });
  // The corner that came before a group now comes after it.
  next.corners = piece.corners.map(({ before, after, form, first }) => ({
    before: after,
    after: before,
    form,
    first,
  }));
  const { grainline } = piece;
  next.grainline = grainline && { from: applyTo(m, grainline.from), to: applyTo(m, grainline.to) };
  return next;
}
