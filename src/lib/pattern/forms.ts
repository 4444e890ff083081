import type { Point } from '../geometry/types.ts';
import type { Dart, Part, Piece } from './types.ts';
import type { BlockForm } from './block.ts';
import type { Bank } from './cut.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { distance, sub } from '../geometry/point.ts';
import { line } from '../geometry/segment.ts';
import { angleBetween } from '../geometry/trig.ts';
import { cutPart } from './cut.ts';
import { piece, sheet } from './draft-shapes.ts';
import { withTip } from './extend.ts';
import { isRefused } from './outcome.ts';
import { outlineOf } from './outline.ts';
import { rejoin, sewnPoint } from './rejoin.ts';
import { BACK_OFF } from './side-dart.ts';
import { turnPart } from './turn.ts';
import { withEdge, withPart, withPiece } from './with.ts';
import { withDart } from './with-marks.ts';

/** How far the sewn waist dart stops short of the bust point, mm: ours, within 1/2 to 3/4 in (memory: Joseph-Armstrong). */
export const WAIST_BACK_OFF = 19;
/** The part of the dart's angle that stays in the side in the form with two darts (ours). */
export const SIDE_SHARE = 0.5;

const SIDE = 'right';
const WAIST = 'right/waist-dart';
const BUST = 'right/bust-point';
/** Walking the outline, the waist dart is entered on its centre leg. */
const CENTRE_LEG = 'right/waist-dart-centre';
const SIDE_LEG = 'right/waist-dart-side';

const waistLeg = (id: string, partner: string, length: number): Bank => ({
  id,
  role: 'dart-leg',
  side: 'right',
  origin: { edge: id, from: 0, to: length },
  partner,
  dart: WAIST,
});

/**
 * The half front with its side dart, in another form of the block: slashed from the waist, straight below the bust point, up to
 * the bust point and turned about it, the same cut and turn that the learner makes. `waist`: the whole angle lies in the waist;
 * `two-dart`: `SIDE_SHARE` of it stays in the side. Both darts are sewn. The waist's edges are `right/waist-inner` (towards centre
 * front) and `right/waist-outer`; in the form `waist` the side is one edge, `right/side`.
 */
export function inForm(front: Piece, form: Exclude<BlockForm, 'side'>): Piece {
  const side = front.darts[0]!;
  const bust = front.parts[0]!.landmarks[BUST]!;
  const part = withTip(front.parts[0]!, side, bust);
  const below = { x: bust.x, y: part.landmarks['waist-centre']!.y };
  const length = distance(below, bust);
  const cut = cutPart(part, [
    {
      chain: [line(below, bust)],
      left: waistLeg(SIDE_LEG, CENTRE_LEG, length),
      right: waistLeg(CENTRE_LEG, SIDE_LEG, length),
    },
  ]);
  if (isRefused(cut)) throw new RangeError('the waist dart cannot be cut');
  const working = withDart(side, { state: 'working' });
  const slashed = withPiece(piece('front', cut.ok.right, [working]), {
    parts: [withPart(cut.ok.left, { id: 'freed' }), cut.ok.right],
    hinges: [{ dart: SIDE, parts: ['freed', 'front'] as const, intact: true }],
  });
  const turned = turnPart(slashed, {
    dart: SIDE,
    part: 'freed',
    pivot: bust,
    by: form === 'waist' ? { until: 'legs-meet' } : { angle: (1 - SIDE_SHARE) * side.residual },
  });
  if (isRefused(turned)) throw new RangeError('the side dart cannot be turned');
  return sewn(turned.ok.piece, side, bust, form);
}

/** The turned sheets as one again, with the darts of the form backed off. */
function sewn(turned: Piece, side: Dart, bust: Point, form: Exclude<BlockForm, 'side'>): Piece {
  const outline = rejoin(outlineOf(turned), {
    'right/waist.1': { id: 'right/waist-inner', role: 'waist' },
    'right/waist.2': { id: 'right/waist-outer', role: 'waist' },
    ...(form === 'waist' && {
      'right/side-lower': 'joined' as const,
      'right/side-upper': {
        id: 'right/side',
        role: 'side' as const,
        partner: 'back/side',
        after: 'right/side-lower',
      },
    }),
  });
  // The two straight parts of the side lie in one line again.
  const edges = outline.map((e) =>
    e.id === 'right/side' ? withEdge(e, { chain: [line(chainStart(e.chain), chainEnd(e.chain))] }) : e,
  );
  const endOf = (leg: string, end: typeof chainEnd): Point => end(edges.find((e) => e.id === leg)!.chain);
  const landmarks: Record<string, Point> = {};
  for (const p of turned.parts)
    for (const [id, at] of Object.entries(p.landmarks))
      if (form !== 'waist' || !id.startsWith('right/dart-')) landmarks[id] = at;

  const darts: Dart[] = [];
  const tips: [Dart, Point][] = [];
  const add = (dart: Dart, inEnd: Point, outEnd: Point, backOff: number, tip: string): void => {
    const residual = angleBetween(sub(inEnd, bust), sub(outEnd, bust));
    darts.push(withDart(dart, { residual }));
    landmarks[tip] = sewnPoint(bust, inEnd, outEnd, backOff);
    tips.push([dart, landmarks[tip]]);
  };
  if (form === 'two-dart')
    add(side, endOf(side.lower, chainStart), endOf(side.upper, chainEnd), BACK_OFF, 'right/sewn-point');
  const centreEnd = endOf(CENTRE_LEG, chainStart);
  const sideEnd = endOf(SIDE_LEG, chainEnd);
  landmarks['right/waist-dart-centre-end'] = centreEnd;
  landmarks['right/waist-dart-side-end'] = sideEnd;
  const waist: Dart = { ...side, id: WAIST, upper: SIDE_LEG, lower: CENTRE_LEG };
  add(waist, centreEnd, sideEnd, WAIST_BACK_OFF, 'right/waist-sewn-point');

  let part: Part = sheet('front', edges, landmarks);
  for (const [dart, tip] of tips) part = withTip(part, dart, tip);
  return piece('front', part, darts);
}
