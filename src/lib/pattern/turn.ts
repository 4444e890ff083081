import type { Isometry, Point } from '../geometry/types.ts';
import type { Dart, Hinge, InnerLine, Part, Piece } from './types.ts';
import { distance, sub } from '../geometry/point.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { rotationByAngle, rotationTaking } from '../geometry/isometry.ts';
import { angleBetween, atan2 } from '../geometry/trig.ts';
import { findDart, legsOf } from './outline.ts';
import { type Pin, movePart } from './move.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { withDart, withPart, withPiece } from './with.ts';

/** A turn as it happened; mm and radians, `angle` positive clockwise on the screen. */
export interface TurnFact {
  readonly dart: string;
  readonly part: string;
  readonly pivot: Point;
  readonly angle: number;
  readonly before: number;
  readonly residual: number;
}

export interface TurnWish {
  readonly dart: string;
  /** `freed`, `rest` or a part id. */
  readonly part: string;
  readonly pivot: Point;
  /** Until the dart's legs point the same way from the pivot, or by an angle, radians, positive clockwise on screen. */
  readonly by: { readonly until: 'legs-meet' } | { readonly angle: number };
}

/** Legs this near to each other (mm) at both ends are closed. */
const MEET = 1e-9;

/**
 * Turns one of the two parts of a slashed dart about `pivot`, and with it what hangs on it by other hinges. The turned sheets
 * lose their grain. Legs that fall on each other close the dart and become a taped inner line; otherwise the signed angle
 * between them stays as the dart's residual. Rigid: no length changes. Refusals: `no-such-dart`, `not-slashed`,
 * `no-such-part`, `pivot-on-leg` when a leg's end is the pivot and so gives no direction, `angle-not-a-number`.
 */
export function turnPart(
  piece: Piece,
  wish: TurnWish,
): Outcome<{ readonly piece: Piece; readonly fact: TurnFact }> {
  const dart = findDart(piece, wish.dart);
  const legs = dart && legsOf(piece, dart);
  if (dart === undefined || legs === undefined) return refuse('no-such-dart', { dart: wish.dart });
  const hinge = piece.hinges.find((h) => h.dart === dart.id);
  if (hinge === undefined) return refuse('not-slashed', { dart: dart.id });
  const partId = wish.part === 'freed' ? hinge.parts[0] : wish.part === 'rest' ? hinge.parts[1] : wish.part;
  if (!piece.parts.some((p) => p.id === partId)) return refuse('no-such-part', { part: wish.part });

  const moving = hangingOn(piece.hinges, partId, hinge);
  const has = (edge: string): boolean =>
    piece.parts.some((p) => moving.has(p.id) && p.edges.some((e) => e.id === edge));
  const inMoves = has(legs.into.id);
  const outMoves = has(legs.outOf.id);
  const pivot = wish.pivot;
  const inEnd = chainStart(legs.into.chain);
  const outEnd = chainEnd(legs.outOf.chain);

  let motion: Isometry;
  if ('angle' in wish.by) {
    if (!Number.isFinite(wish.by.angle)) return refuse('angle-not-a-number');
    motion = rotationByAngle(pivot, wish.by.angle);
  } else {
    if (inMoves === outMoves) return refuse('no-such-part', { part: wish.part });
    const from = inMoves ? inEnd : outEnd;
    const to = inMoves ? outEnd : inEnd;
    if (distance(from, pivot) <= MEET || distance(to, pivot) <= MEET)
      return refuse('pivot-on-leg', { dart: dart.id });
    motion = rotationTaking(pivot, from, to);
  }

  const pins: Pin[] = [[pivot, pivot]];
  const tip = inMoves ? chainEnd(legs.into.chain) : chainStart(legs.outOf.chain);
  const fixedTip = inMoves ? chainStart(legs.outOf.chain) : chainEnd(legs.into.chain);
  const end = inMoves ? inEnd : outEnd;
  const fixedEnd = inMoves ? outEnd : inEnd;
  const closes = inMoves !== outMoves && falls(motion, tip, fixedTip) && falls(motion, end, fixedEnd);
  if (closes) pins.push([end, fixedEnd], [tip, fixedTip]);

  const parts = piece.parts.map((p) =>
    moving.has(p.id) ? withPart(movePart(p, motion, pins), { grain: 'void' as const }) : p,
  );
  const turned = settleDart(withPiece(piece, { parts }), dart, closes);
  const residual = findDart(turned, dart.id)!.residual;
  const angle = atan2(motion.b, motion.a);
  return done({
    piece: turned,
    fact: { dart: dart.id, part: partId, pivot, angle, before: dart.residual, residual },
  });
}

const falls = (m: Isometry, p: Point, q: Point): boolean =>
  distance({ x: m.a * p.x + m.c * p.y + m.e, y: m.b * p.x + m.d * p.y + m.f }, q) <= MEET;

/** Ids of the parts that hang together with `part` when the hinge `but` is left out. */
function hangingOn(hinges: readonly Hinge[], part: string, but: Hinge): Set<string> {
  const out = new Set([part]);
  for (let grew = true; grew;) {
    grew = false;
    for (const h of hinges) {
      if (h === but) continue;
      const [a, b] = h.parts;
      if (out.has(a) === out.has(b)) continue;
      out.add(a).add(b);
      grew = true;
    }
  }
  return out;
}

/** The piece with the dart's state as its legs now lie, and the taped line where they coincide. */
function settleDart(piece: Piece, dart: Dart, closed: boolean): Piece {
  const { into, outOf } = legsOf(piece, dart)!;
  const residual = closed
    ? 0
    : angleBetween(
        sub(chainStart(into.chain), chainEnd(into.chain)),
        sub(chainEnd(outOf.chain), chainStart(outOf.chain)),
      );
  const id = `taped-${dart.id}`;
  const hinge = piece.hinges.find((h) => h.dart === dart.id);
  const retape = (p: Part): Part => {
    const had = p.lines.some((l) => l.id === id);
    if (!had && !closed) return p;
    const lines: InnerLine[] = p.lines.filter((l) => l.id !== id);
    if (closed && p.id === hinge?.parts[1]) {
      const leg = p.edges.some((e) => e.id === into.id) ? into : outOf;
      lines.push({
        id,
        kind: 'taped',
        chain: leg.chain,
        origin: leg.origin,
        dart: dart.id,
        notches: [],
        line: undefined,
        foot: undefined,
        faults: undefined,
      });
    }
    return withPart(p, { lines });
  };
  return withPiece(piece, {
    parts: piece.parts.map(retape),
    darts: piece.darts.map((d) =>
      d.id === dart.id
        ? withDart(d, { state: closed ? ('closed' as const) : ('working' as const), residual })
        : d,
    ),
  });
}
