import { pointAtLength } from '../../geometry/chain.ts';
import { reverseChain } from '../../geometry/chain-moved.ts';
import type { Chain, Point } from '../../geometry/types.ts';
import { standsIn } from '../../pattern/mouth.ts';
import { chainOf, legsOf, outlineOf, partOf } from '../../pattern/outline.ts';
import { pivot } from '../../pattern/pivot.ts';
import type { Dart, Edge, Piece } from '../../pattern/types.ts';
import { legsOfPair, pairsOn, pinPlace, type Leg, type Pair } from './pairs.ts';
import type { EdgePlace } from './slashes.ts';

/** What the dart is called that is only thought of; it never gets onto the table. */
const NEW = 'swung';

/** A block with a mark on its edge, ready to be pinned at a dart's tip and swung until that dart is closed. */
export interface Pinned {
  readonly pair: Pair;
  readonly legs: Readonly<Record<'freed' | 'rest', Leg>>;
  readonly tip: Point;
  /** How the tip lies off the dart's bust point, mm. */
  readonly off: Point;
  /** The outline of each side, from the mark to the dart, as the block lies. */
  readonly outline: Readonly<Record<'freed' | 'rest', Chain>>;
}

const known = new WeakMap<Piece, Map<string, Pinned | undefined>>();

/** The block with that mark and that dart; undefined where there is nothing between the two that could be swung. */
export function pinned(front: Piece, dart: Dart, mark: EdgePlace): Pinned | undefined {
  const key = `${dart.id} ${mark.edge.id} ${mark.along}`;
  const kept = known.get(front) ?? new Map<string, Pinned | undefined>();
  known.set(front, kept);
  if (!kept.has(key)) kept.set(key, pin(front, dart, mark));
  return kept.get(key);
}

/** What would be swung is what a slash from the mark would divide: swung by nothing, so that all lies as it lay. */
function pin(front: Piece, dart: Dart, mark: EdgePlace): Pinned | undefined {
  const about = legsOf(front, dart)?.outOf.chain[0]!.a;
  if (!about) return undefined;
  const wish = { dart: dart.id, slash: NEW, from: mark.point, edge: mark.edge.id, about } as const;
  const done = pivot(front, { ...wish, by: { angle: 0 }, part: 'freed' });
  if ('refused' in done) return undefined;
  const pair = pairsOn(done.ok.piece).find((one) => one.dart.id === dart.id && one.into.id === NEW);
  const legs = pair && legsOfPair(pair);
  const place = pair && pinPlace(pair);
  const outline = pair && sidesOutline(pair);
  if (!pair || !legs || !place || !outline) return undefined;
  return { pair, legs, tip: place.point, off: place.off, outline };
}

function sidesOutline({ piece, dart, into, freed }: Pair): Record<'freed' | 'rest', Chain> | undefined {
  const edges = outlineOf(piece);
  const inNew = (edge: Edge): boolean => standsIn(edge, into.id);
  const from = edges.findIndex((edge, i) => !inNew(edge) && inNew(edges.at(i - 1)!));
  if (from < 0) return undefined;
  const run = [...edges.slice(from), ...edges.slice(0, from)].filter((edge) => !inNew(edge));
  const at = run.findIndex((edge) => standsIn(edge, dart.id));
  const after = run.findLastIndex((edge) => standsIn(edge, dart.id)) + 1;
  const [to, back] = [run.slice(0, at), run.slice(after)];
  const [first] = to;
  if (at < 0 || !first || back.length === 0) return undefined;
  const chains = [chainOf(to), reverseChain(chainOf(back))] as const;
  const firstFreed = freed.has(partOf(piece, first.id)?.id ?? '');
  return firstFreed ? { freed: chains[0], rest: chains[1] } : { freed: chains[1], rest: chains[0] };
}

/** A place on an edge that was kept as text in the tool's settings. */
export function placeOn(
  edges: readonly { readonly part: EdgePlace['part']; readonly edge: Edge }[],
  lengthOf: (edge: Edge) => number,
  text: string,
): EdgePlace | undefined {
  const [id, at] = text.split(' ');
  const found = edges.find(({ edge }) => edge.id === id);
  if (!found) return undefined;
  const whole = lengthOf(found.edge);
  const along = Number(at) * whole;
  return { ...found, point: pointAtLength(found.edge.chain, along), along, whole, off: 0 };
}
