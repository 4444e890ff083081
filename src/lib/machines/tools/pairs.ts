import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { fallApart } from '../../pattern/fall-apart.ts';
import { landmark, legsOf } from '../../pattern/outline.ts';
import { sidesOf } from '../../pattern/turn-into.ts';
import type { Dart, Piece } from '../../pattern/types.ts';

/** What lies still open of a dart that is less than this is nothing, radians. */
const OPEN = 1e-9;

/** A dart that can be closed, and one that opens by as much; and the sheets on the two sides of them. */
export interface Pair {
  /** With its sheets divided, so that each leg is on the one that it turns with. */
  readonly piece: Piece;
  readonly dart: Dart;
  readonly into: Dart;
  readonly freed: ReadonlySet<string>;
  readonly rest: ReadonlySet<string>;
}

const pairs = new WeakMap<Piece, readonly Pair[]>();

/** The pairs between which something can be turned; none on a front that is cut along a style line, or not cut at all. */
export function pairsOn(piece: Piece): readonly Pair[] {
  let found = pairs.get(piece);
  if (!found) pairs.set(piece, (found = piece.seam === undefined ? pairsOf(fallApart(piece)) : []));
  return found;
}

function pairsOf(piece: Piece): readonly Pair[] {
  return piece.darts
    .filter((dart) => dart.state === 'working' && Math.abs(dart.residual) > OPEN)
    .flatMap((dart) =>
      piece.darts.flatMap((into): Pair[] => {
        const sides = sidesOf(piece, dart.id, into.id);
        return 'ok' in sides && into.state === 'working' ? [{ piece, dart, into, ...sides.ok }] : [];
      }),
    );
}

/** A leg of a dart: its outer end and its tip. */
export interface Leg {
  readonly end: Point;
  readonly tip: Point;
}

/** The legs of a dart, on the freed side of a pair and on the other. */
export function legsOfPair(
  { piece, dart, freed }: Pair,
  of: Dart = dart,
): Record<'freed' | 'rest', Leg> | undefined {
  const legs = legsOf(piece, of);
  if (!legs) return undefined;
  const into = { end: chainStart(legs.into.chain), tip: chainEnd(legs.into.chain) };
  const outOf = { end: chainEnd(legs.outOf.chain), tip: chainStart(legs.outOf.chain) };
  const isFreed = piece.parts.some(
    (part) => freed.has(part.id) && part.edges.some(({ id }) => id === legs.into.id),
  );
  return isFreed ? { freed: into, rest: outOf } : { freed: outOf, rest: into };
}

/** Where a dart's pin stands until it is moved: in its tip; and how that is off the bust point, mm. */
export function pinPlace(pair: Pair): { readonly point: Point; readonly off: Point } | undefined {
  const tip = legsOfPair(pair)?.rest.tip;
  const bust = landmark(pair.piece, pair.dart.bustPoint);
  if (!tip || !bust) return undefined;
  return distance(tip, bust) < 1e-6
    ? { point: bust, off: { x: 0, y: 0 } }
    : { point: tip, off: { x: tip.x - bust.x, y: tip.y - bust.y } };
}
