import type { Isometry, Point } from '../geometry/types.ts';
import type { Dart, Edge, InnerLine, Part, Piece } from './types.ts';
import { distance, sub } from '../geometry/point.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { rotationByAngle, rotationTaking } from '../geometry/isometry.ts';
import { angleBetween, atan2 } from '../geometry/trig.ts';
import { isFinished } from './finished.ts';
import { together } from './hang.ts';
import { edgeOn, findDart, legsOf } from './outline.ts';
import { type Pin, movePart } from './move.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { openPiece, withLines, withParts } from './with.ts';
import { withDart } from './with-marks.ts';

/** A turn as it happened; mm and radians, `angle` positive clockwise on the screen. */
export interface TurnFact {
  readonly dart: string;
  readonly part: string;
  readonly pivot: Point;
  readonly angle: number;
  readonly before: number;
  readonly residual: number;
  /** The slash that opened by it, where that was said. */
  readonly into?: string;
}

/**
 * How far: until the dart's legs point the same way from the pivot, by an angle (radians, positive clockwise on screen), or by a share
 * of the angle that the dart has at this moment, in the direction that closes it.
 */
export type TurnBy =
  { readonly until: 'legs-meet' } | { readonly angle: number } | { readonly share: number };

export interface TurnWish {
  readonly dart: string;
  /** `freed`, `rest` or a part id. */
  readonly part: string;
  readonly pivot: Point;
  readonly by: TurnBy;
}

export type Turned = Outcome<{ readonly piece: Piece; readonly fact: TurnFact }>;

/** Legs this near to each other (mm) at both ends are closed. */
const MEET = 1e-9;

/**
 * Turns one of the two parts of a slashed dart about `pivot`, and with it what hangs on it by other hinges. The turned sheets
 * lose their grain. Legs that fall on each other close the dart and become a taped inner line; otherwise the signed angle
 * between them stays as the dart's residual. Rigid: no length changes. Refusals: `no-such-dart`, `already-finished`, `not-slashed`,
 * `no-such-part`, `pivot-on-leg` when a leg's end is the pivot and so gives no direction, `angle-not-a-number`.
 */
export function turnPart(piece: Piece, wish: TurnWish): Turned {
  const dart = findDart(piece, wish.dart);
  if (dart === undefined || legsOf(piece, dart) === undefined)
    return refuse('no-such-dart', { dart: wish.dart });
  if (isFinished(piece)) return refuse('already-finished', { dart: dart.id });
  const hinge = piece.hinges.find((h) => h.dart === dart.id);
  if (hinge === undefined) return refuse('not-slashed', { dart: dart.id });
  const partId = wish.part === 'freed' ? hinge.parts[0] : wish.part === 'rest' ? hinge.parts[1] : wish.part;
  if (!piece.parts.some((p) => p.id === partId)) return refuse('no-such-part', { part: wish.part });
  const pairs = piece.hinges.filter((h) => h !== hinge).map((h) => h.parts);
  return turnSheets(piece, dart, together(partId, pairs), partId, wish);
}

/**
 * Turns the sheets `moving` about the pivot, as the wish about `dart` says; every dart with one leg on a sheet that moves and one on a sheet
 * that stays is settled as its legs then lie. `part` names the turned sheets in the fact. Refusals: `no-such-part` when
 * both of the dart's legs would turn or both would stay and so nothing says how far, `pivot-on-leg`, `angle-not-a-number`.
 */
export function turnSheets(
  piece: Piece,
  dart: Dart,
  moving: ReadonlySet<string>,
  part: string,
  { by, pivot, part: wanted }: TurnWish,
): Turned {
  const own = straddle(piece, dart, moving);
  if (own === undefined) return refuse('no-such-dart', { dart: dart.id });
  let motion: Isometry;
  if ('until' in by || ('share' in by && by.share === 1)) {
    if (!own.apart) return refuse('no-such-part', { part: wanted });
    if (distance(own.end, pivot) <= MEET || distance(own.fixedEnd, pivot) <= MEET)
      return refuse('pivot-on-leg', { dart: dart.id });
    motion = rotationTaking(pivot, own.end, own.fixedEnd);
  } else {
    let angle: number;
    if ('share' in by) {
      if (!own.apart) return refuse('no-such-part', { part: wanted });
      angle = by.share * angleBetween(sub(own.end, own.tip), sub(own.fixedEnd, own.fixedTip));
    } else angle = by.angle;
    if (!Number.isFinite(angle)) return refuse('angle-not-a-number');
    motion = rotationByAngle(pivot, angle);
  }

  const pins: Pin[] = [[pivot, pivot]];
  const settled = new Map<string, boolean>();
  for (const d of piece.darts) {
    const legs = d === dart ? own : straddle(piece, d, moving);
    if (legs === undefined || (d !== dart && !legs.apart)) continue;
    const meet =
      legs.apart && falls(motion, legs.tip, legs.fixedTip) && falls(motion, legs.end, legs.fixedEnd);
    // A slash that nothing was turned into yet is not closed by lying on itself.
    const closes = meet && (d === dart || d.state === 'closed' || d.residual !== 0);
    if (closes) pins.push([legs.end, legs.fixedEnd], [legs.tip, legs.fixedTip]);
    settled.set(d.id, closes);
  }

  const parts = piece.parts.map((p) => (moving.has(p.id) ? movePart(p, motion, pins, 'void') : p));
  let turned = withParts(piece, parts);
  for (const d of piece.darts) {
    const closes = settled.get(d.id);
    if (closes !== undefined) turned = settleDart(turned, d, closes, moving);
  }
  const residual = findDart(turned, dart.id)!.residual;
  const angle = atan2(motion.b, motion.a);
  return done({
    piece: turned,
    fact: { dart: dart.id, part, pivot, angle, before: dart.residual, residual },
  });
}

interface Straddling {
  /** Whether one leg moves and the other stays. */
  readonly apart: boolean;
  /** Outer end and tip of the leg that moves (of the one out of the tip when not apart), and of the other. */
  readonly end: Point;
  readonly tip: Point;
  readonly fixedEnd: Point;
  readonly fixedTip: Point;
}

function straddle(piece: Piece, dart: Dart, moving: ReadonlySet<string>): Straddling | undefined {
  const legs = legsOf(piece, dart);
  if (legs === undefined) return undefined;
  const inMoves = isOn(piece, legs.into.id, moving);
  const inEnd = chainStart(legs.into.chain);
  const inTip = chainEnd(legs.into.chain);
  const outEnd = chainEnd(legs.outOf.chain);
  const outTip = chainStart(legs.outOf.chain);
  return {
    apart: inMoves !== isOn(piece, legs.outOf.id, moving),
    end: inMoves ? inEnd : outEnd,
    tip: inMoves ? inTip : outTip,
    fixedEnd: inMoves ? outEnd : inEnd,
    fixedTip: inMoves ? outTip : inTip,
  };
}

function isOn(piece: Piece, edge: string, moving: ReadonlySet<string>): boolean {
  for (const p of piece.parts) if (moving.has(p.id) && edgeOn(p, edge) !== undefined) return true;
  return false;
}

const falls = (m: Isometry, p: Point, q: Point): boolean =>
  distance({ x: m.a * p.x + m.c * p.y + m.e, y: m.b * p.x + m.d * p.y + m.f }, q) <= MEET;

/** The piece with the dart's state as its legs now lie, and the taped line where they coincide. */
function settleDart(piece: Piece, dart: Dart, closed: boolean, moved: ReadonlySet<string>): Piece {
  const { into, outOf } = legsOf(piece, dart)!;
  const residual = closed
    ? 0
    : angleBetween(
        sub(chainStart(into.chain), chainEnd(into.chain)),
        sub(chainEnd(outOf.chain), chainStart(outOf.chain)),
      );
  const id = `taped-${dart.id}`;
  const hinge = piece.hinges.find((h) => h.dart === dart.id);
  const taped = hinge?.parts[1] ?? piece.parts.find((p) => !moved.has(p.id) && hasLeg(p, into, outOf))?.id;
  const retape = (p: Part): Part => {
    const had = p.lines.some((l) => l.id === id);
    if (!had && !(closed && p.id === taped)) return p;
    const lines: InnerLine[] = p.lines.filter((l) => l.id !== id);
    if (closed && p.id === taped) {
      const leg = edgeOn(p, into.id) !== undefined ? into : outOf;
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
    return withLines(p, lines);
  };
  const next = openPiece(piece);
  next.parts = piece.parts.map(retape);
  next.darts = piece.darts.map((d) =>
    d.id === dart.id ? withDart(d, { state: closed ? 'closed' : 'working', residual }) : d,
  );
  return next;
}

const hasLeg = (p: Part, into: Edge, outOf: Edge): boolean =>
  edgeOn(p, into.id) !== undefined || edgeOn(p, outOf.id) !== undefined;
