import type { Bank } from './cut.ts';
import type { Dart, Part, Piece } from './types.ts';
import { distance } from '../geometry/point.ts';
import { hullBox } from '../geometry/segment.ts';
import { intersectChains } from '../geometry/intersect.ts';
import type { Chain, Point } from '../geometry/types.ts';
import { clearOf } from './clear.ts';
import { cutPart, followSplits } from './cut.ts';
import { fallApart } from './fall-apart.ts';
import { rehang } from './hang.ts';
import { endAt, findDart } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { freedId, keepsPlace } from './slash.ts';
import { findSlash, isSlash, tipsOn } from './slash-line.ts';
import { withPart, withPiece } from './with.ts';

/** A slash that ends this near (mm) to a dart's tip ends in it. */
const AT_TIP = 1e-4;
/** Lines that meet this near (mm) to an end of the cut do not cross it. */
const AT_END = 1e-3;

/**
 * Cuts along a slash line from its edge to its end, which must be the tip of a working dart or a point that was cut to before. The
 * sheet falls in two that hang together in the tip: the freed one is called `freed-<slash>`, the other keeps its name. From then on the slash
 * is a dart of its own whose legs, `<slash>/a` and `<slash>/b`, are the banks of the cut and still lie on each other. `past` in mm:
 * 0 to the tip, more goes through. Refusals: `already-finished`, `line-already-cut`, `no-such-line`, `slash-stops-short`
 * (mm), `no-such-dart`, `slash-misses-dart` (mm to the nearest dart's tip), `slash-crosses-line`, `cut-off-outline`.
 */
export function cutSlash(piece: Piece, id: string, past: number): Outcome<Piece> {
  if (piece.seam !== undefined) return refuse('already-finished', { line: id });
  const before = findDart(piece, id);
  if (before !== undefined && isSlash(before)) return refuse('line-already-cut', { line: id });
  const apart = fallApart(piece);
  const found = findSlash(apart, id);
  if (found === undefined) return refuse('no-such-line', { line: id });
  const { part, line } = found;
  if (!(past >= 0)) return refuse('slash-stops-short', { dart: id, mm: -past });

  const end = line.chain[line.chain.length - 1]!.d;
  const own = nearestTip(apart, [part], end);
  const nearest = own ?? nearestTip(apart, apart.parts, end);
  if (nearest === undefined) return refuse('no-such-dart', { line: id });
  const { mm } = nearest;
  if (own === undefined || mm > AT_TIP || nearest.dart.state === 'sewn')
    return refuse('slash-misses-dart', { line: id, mm });
  const chain = endAt(line.chain, nearest.tip);
  const crossed = part.lines.find((l) => l !== line && l.kind !== 'centre-front' && crosses(l.chain, chain));
  if (crossed !== undefined) return refuse('slash-crosses-line', { line: id, other: crossed.id });

  const dart = slashDart(id, nearest.dart);
  const bank = (which: 'a' | 'b'): Bank => ({
    id: `${id}/${which}`,
    role: 'dart-leg',
    side: dart.side,
    origin: line.origin,
    partner: `${id}/${which === 'a' ? 'b' : 'a'}`,
    dart: id,
  });
  const lines = part.lines.filter((l) => l !== line);
  const cut = cutPart(withPart(part, { lines }), [{ chain, left: bank('a'), right: bank('b') }]);
  if ('refused' in cut) return cut;
  const { left, right, split } = cut.ok;
  const keeps = keepsPlace(left, right);
  const freed: Part = withPart(keeps === left ? right : left, { id: freedId(id) });
  const at = apart.parts.indexOf(part);
  const hinge = { dart: id, parts: [freed.id, keeps.id] as const, intact: past === 0 };
  return done(
    withPiece(apart, {
      parts: [...apart.parts.slice(0, at), keeps, ...apart.parts.slice(at + 1), freed],
      hinges: [...rehang(apart.hinges, part.id, freed, apart), hinge],
      darts: [...apart.darts, dart],
      notches: followSplits(apart.notches, split),
    }),
  );
}

/** The tip of a dart nearest to p on some of the piece's sheets, and how far it is, mm. */
function nearestTip(
  piece: Piece,
  parts: readonly Part[],
  p: Point,
): { readonly dart: Dart; readonly tip: Point; readonly mm: number } | undefined {
  let best: { dart: Dart; tip: Point; mm: number } | undefined;
  for (const part of parts) {
    for (const { dart, tip } of tipsOn(piece, part)) {
      const mm = distance(tip, p);
      if (best === undefined || mm < best.mm) best = { dart, tip, mm };
    }
  }
  return best;
}

/** The slash as a dart: on the outline bank b runs into the tip and bank a out of it. `to` is the dart whose tip it was cut to. */
function slashDart(id: string, to: Dart): Dart {
  const [into, outOf] = [`${id}/b`, `${id}/a`];
  const left = to.side === 'left';
  return {
    id,
    side: to.side,
    state: 'working',
    upper: left ? into : outOf,
    lower: left ? outOf : into,
    bustPoint: to.bustPoint,
    residual: 0,
  };
}

/** Whether a line drawn on the sheet meets the cut elsewhere than in the cut's ends. */
function crosses(drawn: Chain, cut: Chain): boolean {
  if (cut.every((s) => drawn.every((u) => clearOf(u, hullBox(s), AT_END)))) return false;
  const start = cut[0]!.a;
  const end = cut[cut.length - 1]!.d;
  return intersectChains(drawn, cut).some(
    ({ point }) => distance(point, start) > AT_END && distance(point, end) > AT_END,
  );
}
