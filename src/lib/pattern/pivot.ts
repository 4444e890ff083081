import type { Point } from '../geometry/types.ts';
import type { Dart, Part, Piece } from './types.ts';
import { distance } from '../geometry/point.ts';
import { chainEnd } from '../geometry/chain.ts';
import { cutSlash } from './cut-slash.ts';
import { fallApart } from './fall-apart.ts';
import { findDart, landmark, legsOf } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { drawSlash, sheetAt, tipsOn } from './slash-line.ts';
import type { TurnBy, TurnFact } from './turn.ts';
import { turnInto } from './turn-into.ts';

export interface PivotWish {
  readonly dart: string;
  /** What the new dart is called. */
  readonly slash: string;
  /** The mark on the outline, mm, and the edge that it was made on. */
  readonly from: Point;
  readonly edge?: string | undefined;
  /** The pin. */
  readonly about: Point;
  readonly by: TurnBy;
  readonly part: string;
}

export interface Pivoted {
  /** The piece with the new dart's place marked and nothing turned. */
  readonly marked: Piece;
  readonly piece: Piece;
  readonly fact: TurnFact;
}

/**
 * Pins the block at `about`, traces its outline from the dart round to the mark, swings it and traces the rest: the dart closes and a new
 * one opens at the mark. No paper is cut, and nothing but the outline comes of it, so the result is that of the slash: a line from the mark to the
 * dart's tip, its cut, and the turn between the two (`drawSlash`, `cutSlash`, `turnInto`). Refusals: those of the three, and
 * `slash-misses-dart` (mm from its tip to the bust point) for a dart whose legs do not run to the bust point yet.
 */
export function pivot(piece: Piece, wish: PivotWish): Outcome<Pivoted> {
  const apart = fallApart(piece);
  const dart = findDart(apart, wish.dart);
  const legs = dart && legsOf(apart, dart);
  if (dart === undefined || legs === undefined) return refuse('no-such-dart', { dart: wish.dart });
  const tip = chainEnd(legs.into.chain);
  if (dart.state === 'sewn') {
    const mm = distance(tip, landmark(apart, dart.bustPoint) ?? tip);
    return refuse('slash-misses-dart', { line: wish.slash, mm });
  }
  const sheet = sheetAt(apart, wish.from, wish.edge);
  const to = sheet === undefined ? tip : tipOn(apart, sheet, dart, tip);
  const marked = drawSlash(apart, wish.slash, { from: wish.from, to }, wish.edge);
  if ('refused' in marked) return marked;
  const cut = cutSlash(marked.ok, wish.slash, 0);
  if ('refused' in cut) return cut;
  const { about, by, part } = wish;
  const turned = turnInto(cut.ok, { dart: dart.id, into: wish.slash, part, pivot: about, by });
  return 'refused' in turned ? turned : done({ ...turned.ok, marked: marked.ok });
}

/** The dart's tip as that sheet has it: its own leg's, or that of another dart there which is nearest to it. */
function tipOn(piece: Piece, sheet: Part, dart: Dart, tip: Point): Point {
  const tips = tipsOn(piece, sheet);
  const own = tips.find((t) => t.dart === dart);
  if (own !== undefined) return own.tip;
  return tips.reduce(
    (best, t) => (distance(t.tip, tip) < distance(best, tip) ? t.tip : best),
    tips[0]?.tip ?? tip,
  );
}
