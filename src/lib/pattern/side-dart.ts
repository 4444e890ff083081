import type { Point } from '../geometry/types.ts';
import type { Dart, Part, Piece } from './types.ts';
import { distance, sub } from '../geometry/point.ts';
import { line } from '../geometry/segment.ts';
import { pointAtLength } from '../geometry/chain.ts';
import { angleBetween } from '../geometry/trig.ts';
import { cutPart } from './cut.ts';
import { piece, sheet } from './draft-shapes.ts';
import { withTip } from './extend.ts';
import { isRefused } from './outcome.ts';
import { outlineOf } from './outline.ts';
import { rejoin, type Rejoined, sewnPoint } from './rejoin.ts';
import { turnPart } from './turn.ts';
import { withPart, withPiece } from './with.ts';

/** How far the sewn dart stops short of the bust point, mm (1 in; memory: Joseph-Armstrong). */
export const BACK_OFF = 25.4;
/** Where the dart goes in the side seam: this part of the seam below the underarm (ours). */
const DART_DOWN_SIDE = 0.3;

const REJOINED: Readonly<Record<string, Rejoined | 'joined'>> = {
  'right/side.1': { id: 'right/side-lower', role: 'side', partner: 'back/side' },
  'right/side.2': { id: 'right/side-upper', role: 'side', partner: 'back/side' },
  'armhole/below': 'joined',
  'armhole/above': { id: 'right/armhole', role: 'armhole', after: 'armhole/below' },
};

/** Slash from the side to the bust point, close the armhole dart, rejoin: the same cut and turn that the learner makes. */
export function moveDartToSide(
  part: Part,
  bust: Point,
  sideLength: number,
): { readonly piece: Piece; readonly dartAngle: number } {
  const side = part.edges.find((e) => e.id === 'right/side')!;
  const place = pointAtLength(side.chain, sideLength * (1 - DART_DOWN_SIDE));
  const legs = { into: 'right/dart-lower', outOf: 'right/dart-upper' };
  const leg = (id: string, partner: string) => ({
    id,
    role: 'dart-leg' as const,
    side: 'right' as const,
    origin: { edge: id, from: 0, to: distance(place, bust) },
    partner,
    dart: 'right',
  });
  const cut = cutPart(part, [
    { chain: [line(place, bust)], left: leg(legs.outOf, legs.into), right: leg(legs.into, legs.outOf) },
  ]);
  if (isRefused(cut)) throw new RangeError('the side dart cannot be cut');
  const armholeDart: Dart = {
    id: 'armhole',
    side: 'right',
    state: 'working',
    upper: 'armhole/leg-upper',
    lower: 'armhole/leg-lower',
    bustPoint: 'right/bust-point',
    residual: 0,
  };
  const freed = withPart(cut.ok.left, { id: 'freed' });
  const slashed = withPiece(piece('front', cut.ok.right, [armholeDart]), {
    parts: [freed, cut.ok.right],
    hinges: [{ dart: 'armhole', parts: ['freed', 'front'] as const, intact: true }],
  });
  const turned = turnPart(slashed, {
    dart: 'armhole',
    part: 'freed',
    pivot: bust,
    by: { until: 'legs-meet' },
  });
  if (isRefused(turned)) throw new RangeError('the armhole dart cannot be closed');

  const parts = turned.ok.piece.parts;
  const edges = rejoin(outlineOf(turned.ok.piece), REJOINED);
  const upperEnd = edges.find((e) => e.id === 'right/dart-upper')!.chain[0]!.d;
  const dartAngle = angleBetween(sub(place, bust), sub(upperEnd, bust));
  const sewn = sewnPoint(bust, place, upperEnd, BACK_OFF);
  const dart: Dart = {
    id: 'right',
    side: 'right',
    state: 'sewn',
    upper: 'right/dart-upper',
    lower: 'right/dart-lower',
    bustPoint: 'right/bust-point',
    residual: dartAngle,
  };
  const above = parts[0]!.landmarks;
  const below = parts[1]!.landmarks;
  const lies = (id: string): Point => below[id] ?? above[id]!;
  // Named one by one: a table that is put together from others is a slow one to engines, and stays so in all its copies.
  const landmarks = {
    'right/bust-point': lies('right/bust-point'),
    'right/underarm': lies('right/underarm'),
    'right/neck-point': lies('right/neck-point'),
    'right/shoulder-point': lies('right/shoulder-point'),
    'right/side-waist': lies('right/side-waist'),
    'neck-centre': lies('neck-centre'),
    'waist-centre': lies('waist-centre'),
    'right/sewn-point': sewn,
    'right/dart-upper-end': upperEnd,
    'right/dart-lower-end': place,
  };
  return { piece: piece('front', withTip(sheet('front', edges, landmarks), dart, sewn), [dart]), dartAngle };
}
