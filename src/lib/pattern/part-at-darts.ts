import type { Dart, Edge, EdgeNotch, Hinge, Part, Piece } from './types.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { distance } from '../geometry/point.ts';
import { baseId, suffixOf } from './copy.ts';
import { edgeLength } from './edge-length.ts';
import { fallApart } from './fall-apart.ts';
import { finishedDart, mouthOf } from './mouth.ts';
import { findEdge, legsOf, partOf } from './outline.ts';
import { type Outcome, done, isRefused, refuse } from './outcome.ts';
import { sidesOf } from './turn-into.ts';
import { withPart, withPiece } from './with.ts';
import { withNotch } from './with-marks.ts';

/** Tips this far apart (mm) are one point. */
const ONE_POINT = 1e-6;

/** What the seam is called along which a piece was parted, by the bust point it runs through. */
export const princessLine = (bustPoint: string): string =>
  bustPoint.startsWith('left/') ? 'princess-left' : 'princess';

/**
 * Cuts a piece apart along two darts of one bust point, open or just cut: a princess line. What lies between them on the side of
 * centre front is called `<piece>-centre`, the other part `<piece>-side` (`-side-left` at the left bust point). The facing legs become the
 * banks of one seam that runs from the edge of the first dart over the bust point to the edge of the second: `princess/1/a` and
 * `princess/1/b` are partners, and so are `princess/2/a` and `princess/2/b`. No sheet moves; other darts stay as they are, taped or open.
 * Refusals: `no-such-dart`, `dart-is-closed`, `dart-not-working` for a dart that is drawn short of the bust point, `dart-finished`,
 * `already-gathered`, `darts-apart` (mm) when the two do not meet in one point, `name-taken`, `not-between` when two cuts there do not
 * part the piece.
 */
export function partAtDarts(
  whole: Piece,
  ids: readonly [string, string],
): Outcome<readonly [centre: Piece, side: Piece]> {
  const piece = fallApart(whole);
  const pair = pairOf(piece, ids);
  if (isRefused(pair)) return pair;
  const [one, two] = pair.ok;
  const line = princessLine(one.dart.bustPoint);
  if (findEdge(piece, `${line}/1/a`) !== undefined) return refuse('name-taken', { line });
  const sides = sidesOf(piece, one.dart.id, two.dart.id);
  if (isRefused(sides)) return sides;

  const banks = new Map([
    bank(one.outOf, line, 1, 'a', 0, one.into),
    bank(one.into, line, 1, 'b', 0, one.into),
    bank(two.into, line, 2, 'a', edgeLength(one.into), two.outOf),
    bank(two.outOf, line, 2, 'b', edgeLength(one.into), two.outOf),
  ]);
  const rename = (e: Edge): Edge => {
    const to = banks.get(e.id);
    return to === undefined ? e : { ...to, chain: e.chain };
  };
  const base = baseId(piece.id);
  const stem = base.endsWith('-centre') ? base.slice(0, -'-centre'.length) : base;
  const sideId = `${stem}-side${line === 'princess' ? '' : '-left'}`;
  const suffix = suffixOf(piece.id);
  const made = [
    asPiece(piece, sides.ok.rest, `${stem}-centre${suffix}`, ids, rename),
    asPiece(piece, sides.ok.freed, `${sideId}${suffix}`, ids, rename),
  ] as const;
  return done([withSeam(made[0], piece, line, rename), withSeam(made[1], piece, line, rename)]);
}

interface Legs {
  readonly dart: Dart;
  readonly into: Edge;
  readonly outOf: Edge;
}

/** Both darts with their legs, if a piece can be parted along them. */
function pairOf(piece: Piece, ids: readonly [string, string]): Outcome<readonly [Legs, Legs]> {
  const found: Legs[] = [];
  for (const id of ids) {
    const mouth = mouthOf(piece, id);
    if (isRefused(mouth)) return mouth;
    const { dart } = mouth.ok;
    if (dart.state === 'sewn') return refuse('dart-not-working', { dart: id });
    if (finishedDart(piece, id) !== undefined) return refuse('dart-finished', { dart: id });
    const legs = legsOf(piece, dart);
    if (legs === undefined) return refuse('no-such-dart', { dart: id });
    found.push({ dart, ...legs });
  }
  const [one, two] = found as [Legs, Legs];
  const tips = [one, two].flatMap((d) => [chainEnd(d.into.chain), chainStart(d.outOf.chain)]);
  const mm = Math.max(...tips.map((p) => distance(p, tips[0]!)));
  if (mm > ONE_POINT || one.dart.bustPoint !== two.dart.bustPoint) return refuse('darts-apart', { mm });
  return done([one, two]);
}

/** A leg's id with the edge that it becomes; `along` is a leg that lies along the stretch of the line. */
function bank(
  leg: Edge,
  line: string,
  n: 1 | 2,
  which: 'a' | 'b',
  from: number,
  along: Edge,
): readonly [string, Edge] {
  const id = `${line}/${n}/${which}`;
  const origin = { edge: line, from, to: from + edgeLength(along) };
  const partner = `${line}/${n}/${which === 'a' ? 'b' : 'a'}`;
  return [
    leg.id,
    { id, role: 'style-line', side: leg.side, chain: leg.chain, origin, partner, dart: undefined, leg },
  ];
}

function asPiece(
  piece: Piece,
  ids: ReadonlySet<string>,
  id: string,
  parted: readonly [string, string],
  rename: (e: Edge) => Edge,
): Piece {
  const own = piece.parts.filter((p) => ids.has(p.id));
  // The sheet that was the whole piece's takes the new piece's name; freed ones keep theirs unless there is no other.
  const main = own.find((p) => !p.id.startsWith('freed-')) ?? own[0]!;
  const called = (part: string): string => (part === main.id ? id : part);
  const darts = piece.darts.filter(
    (d) => !parted.includes(d.id) && ids.has(partOf(piece, d.upper)?.id ?? ''),
  );
  const parts = own.map((p): Part => withPart(p, { id: called(p.id), edges: p.edges.map(rename) }));
  const hinges: Hinge[] = [];
  for (const d of darts) {
    const legs = legsOf(piece, d);
    const a = legs && partOf(piece, legs.into.id)!.id;
    const b = legs && partOf(piece, legs.outOf.id)!.id;
    if (a === undefined || b === undefined || a === b || !ids.has(a) || !ids.has(b)) continue;
    const known = piece.hinges.find((h) => h.dart === d.id);
    const [first, second] = known?.parts ?? [a, b];
    hinges.push({ dart: d.id, parts: [called(first), called(second)], intact: known?.intact ?? true });
  }
  const mainPart = parts.find((p) => p.id === id)!;
  return withPiece(piece, {
    id,
    parts: [mainPart, ...parts.filter((p) => p !== mainPart)],
    hinges,
    darts,
    finished: piece.finished?.filter((f) => darts.some((d) => d.id === f.dart)),
    fullness: piece.fullness?.filter((f) => darts.some((d) => d.id === f.dart)),
  });
}

/** The piece with its share of a seam outline that was drawn before, and with the notches on its edges. */
function withSeam(made: Piece, whole: Piece, line: string, rename: (e: Edge) => Edge): Piece {
  const seam = whole.seam && ownLoop(whole.seam.map(rename), line, findEdge(made, `${line}/1/a`) ? 'a' : 'b');
  const ids = new Set(made.parts.flatMap((p) => p.edges.map((e) => e.id)));
  for (const e of seam ?? []) ids.add(e.id);
  const notches: EdgeNotch[] = [];
  for (const m of whole.notches) {
    const e = findEdge(whole, m.edge);
    const edge = e === undefined ? m.edge : rename(e).id;
    if (ids.has(edge)) notches.push(edge === m.edge ? m : withNotch(m, { edge }));
  }
  return withPiece(made, { seam, notches });
}

/** One of the two loops that the banks of the line divide an outline into. */
function ownLoop(outline: readonly Edge[], line: string, which: 'a' | 'b'): readonly Edge[] {
  const [from, to] = which === 'a' ? ['1/a', '2/a'] : ['2/b', '1/b'];
  const i = outline.findIndex((e) => e.id === `${line}/${from}`);
  const j = outline.findIndex((e) => e.id === `${line}/${to}`);
  return i <= j ? outline.slice(i, j + 1) : [...outline.slice(i), ...outline.slice(0, j + 1)];
}
