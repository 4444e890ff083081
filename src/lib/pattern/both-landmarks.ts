import type { Isometry, Point } from '../geometry/types.ts';
import type { Part } from './types.ts';
import { applyTo } from '../geometry/isometry.ts';
import { samePoint } from '../geometry/point.ts';
import { otherId } from './other-id.ts';

type Landmarks = Part['landmarks'];

/**
 * Landmarks of both halves of a front, mirrored by m across the fold from p to q; those on the fold itself are common to both and get
 * no twin.
 */
export function bothLandmarks(landmarks: Landmarks, m: Isometry, p: Point, q: Point): Landmarks {
  const onFold = (at: Point): boolean => samePoint(at, p) || samePoint(at, q);
  const image = (at: Point): Point => (onFold(at) ? at : applyTo(m, at));
  if (isSideForm(landmarks) && onFold(landmarks[NECK]!) && onFold(landmarks[WAIST]!))
    return sideForm(landmarks, image);
  const out: Record<string, Point> = { ...landmarks };
  for (const id in landmarks) {
    const at = landmarks[id]!;
    if (id.startsWith('right/') || !onFold(at)) out[otherId(id)] = image(at);
  }
  return out;
}

const NECK = 'neck-centre';
const WAIST = 'waist-centre';

/** The landmarks of the half front with a side dart, in the order in which the draft has them. */
const SIDE_FORM = [
  'right/bust-point',
  'right/underarm',
  'right/neck-point',
  'right/shoulder-point',
  'right/side-waist',
  NECK,
  WAIST,
  'right/sewn-point',
  'right/dart-upper-end',
  'right/dart-lower-end',
] as const;

function isSideForm(landmarks: Landmarks): landmarks is Record<(typeof SIDE_FORM)[number], Point> {
  let i = 0;
  for (const id in landmarks) if (id !== SIDE_FORM[i++]) return false;
  return i === SIDE_FORM.length;
}

/**
 * The same for the form that nearly every front has, written out: engines look a landmark up quickly where all tables of them were made
 * in one place, and slowly where so many were added one by one.
 */
const sideForm = (
  l: Readonly<Record<(typeof SIDE_FORM)[number], Point>>,
  image: (at: Point) => Point,
): Landmarks => ({
  'right/bust-point': l['right/bust-point'],
  'right/underarm': l['right/underarm'],
  'right/neck-point': l['right/neck-point'],
  'right/shoulder-point': l['right/shoulder-point'],
  'right/side-waist': l['right/side-waist'],
  'neck-centre': l['neck-centre'],
  'waist-centre': l['waist-centre'],
  'right/sewn-point': l['right/sewn-point'],
  'right/dart-upper-end': l['right/dart-upper-end'],
  'right/dart-lower-end': l['right/dart-lower-end'],
  'left/bust-point': image(l['right/bust-point']),
  'left/underarm': image(l['right/underarm']),
  'left/neck-point': image(l['right/neck-point']),
  'left/shoulder-point': image(l['right/shoulder-point']),
  'left/side-waist': image(l['right/side-waist']),
  'left/sewn-point': image(l['right/sewn-point']),
  'left/dart-upper-end': image(l['right/dart-upper-end']),
  'left/dart-lower-end': image(l['right/dart-lower-end']),
});
