import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { isSlash } from '../../pattern/slash-line.ts';
import type { Dart, Part, Piece } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';
import { frontPieces, landmarkIn, type Scene } from '../scene.ts';
import { legOf } from './dart-legs.ts';
import { legsOfPair, pairsOn, pinPlace, type Leg, type Pair } from './pairs.ts';

/** A dart that is still open, seen from what can be turned to close it and from the rest. */
export interface Opening {
  readonly piece: Piece;
  readonly dart: Dart;
  /** The dart that opens as this one closes; undefined where a style line was slashed. */
  readonly into: Dart | undefined;
  /** Where the pin stands unless it is moved, and how that lies off the bust point, mm. */
  readonly tip: Point;
  readonly off: Point;
  readonly legs: Readonly<Record<'freed' | 'rest', Leg>>;
  /** The sheets of the two sides, by part ids. */
  readonly freed: ReadonlySet<string>;
  readonly rest: ReadonlySet<string>;
}

/** The darts that the tool may close: those that were slashed along a style line, or of each front the pair that was chosen. */
export const openingsOf = (scene: Scene): readonly Opening[] =>
  frontPieces(scene).flatMap((piece) => {
    const pair = pairFor(scene, pairsOn(piece));
    return pair ? fromPair(piece, pair) : slashedDarts(piece);
  });

/** The darts of a front that can be closed, and those that the chosen one can be turned into. */
export function choicesOf(scene: Scene): {
  readonly darts: readonly string[];
  readonly into: readonly string[];
} {
  const pairs = frontPieces(scene).flatMap(pairsOn);
  const pair = pairFor(scene, pairs);
  const darts = [...new Set(pairs.map(({ dart }) => dart.id))];
  return {
    darts,
    into: pairs.filter(({ dart }) => dart.id === pair?.dart.id).map(({ into }) => into.id),
  };
}

/** The pair that was chosen; else an old dart goes before a slash, and a slash that nothing was turned into yet before all else. */
function pairFor({ options }: Scene, pairs: readonly Pair[]): Pair | undefined {
  const rank = ({ dart, into }: Pair): number =>
    (dart.id === options['dart'] ? 0 : 8) +
    (isSlash(dart) ? 4 : 0) +
    (into.id === options['into'] ? 0 : 2) +
    (isSlash(into) && into.residual === 0 ? 0 : 1);
  return pairs.reduce<Pair | undefined>(
    (best, pair) => (best && rank(best) <= rank(pair) ? best : pair),
    undefined,
  );
}

function fromPair(piece: Piece, pair: Pair): Opening[] {
  const [legs, pin] = [legsOfPair(pair), pinPlace(pair)];
  if (!legs || !pin) return [];
  const { dart, into, freed, rest } = pair;
  return [{ piece, dart, into, tip: pin.point, off: pin.off, legs, freed, rest }];
}

const slashedDarts = (piece: Piece): Opening[] =>
  piece.hinges.flatMap((hinge): Opening[] => {
    const dart = piece.darts.find((one) => one.id === hinge.dart);
    const tip = dart && landmarkIn([piece], dart.bustPoint)?.point;
    const [freed, rest] = hinge.parts.map((id) => piece.parts.find((part) => part.id === id));
    if (!dart || !tip || !freed || !rest || dart.state === 'closed' || isSlash(dart)) return [];
    const [own, other] = [freed, rest].map((part) => legOn(piece, dart, part, tip));
    if (!own || !other) return [];
    const sides = { freed: new Set([freed.id]), rest: new Set([rest.id]) };
    return [
      { piece, dart, into: undefined, tip, off: { x: 0, y: 0 }, legs: { freed: own, rest: other }, ...sides },
    ];
  });

/** The leg of a dart that lies on a part. */
function legOn(piece: Piece, dart: Dart, part: Part, tip: Point): Leg | undefined {
  for (const id of [dart.upper, dart.lower]) {
    const leg = legOf(piece, id);
    if (leg?.part.id === part.id) return { end: outer(leg.edge.chain, tip), tip };
  }
  return undefined;
}

/** The end of a leg that is away from its tip. */
function outer(chain: Parameters<typeof chainStart>[0], tip: Point): Point {
  const [a, b] = [chainStart(chain), chainEnd(chain)];
  return distance(a, tip) > distance(b, tip) ? a : b;
}

/** The outer ends of a dart's legs as they lie in some work; undefined once it is closed. */
export function mouthIn(
  work: Work,
  piece: string,
  dart: Dart,
  tip: Point,
): { readonly from: Point; readonly to: Point } | undefined {
  const now = work.pieces.find(({ id }) => id === piece);
  const [upper, lower] = [dart.upper, dart.lower].map((id) => now && legOf(now, id)?.edge.chain);
  return upper && lower && { from: outer(upper, tip), to: outer(lower, tip) };
}
