import type { Point } from '../geometry/types.ts';
import type { Piece } from './types.ts';
import type { Measures } from './block.ts';
import { add, scale } from '../geometry/point.ts';
import { cubic, line } from '../geometry/segment.ts';
import { applyTo, rotationByAngle } from '../geometry/isometry.ts';
import { type Construction, bisector, guideLevel } from './construction.ts';
import { NECK_ANGLE, at, curve, edge, heading, sheet } from './draft-shapes.ts';
import { moveDartToSide } from './side-dart.ts';

/** The front shoulder slopes 22° (Bunka, memory). */
const SHOULDER = heading(180 - 22);
/** Square to it, into the armhole. */
const INWARD = heading(180 - 22 - 90);
const NECK_START = heading(180 - 22 - NECK_ANGLE);
/** The armhole's direction at its guide point: square to the bisector. */
const SLANT = heading(135);

/** The half front with its bust dart in the side seam, and that dart's angle in radians. */
export function draftFront(
  m: Measures,
  c: Construction,
  shoulderLength: number,
): { readonly piece: Piece; readonly dartAngle: number } {
  const waistY = m.napeToWaist - c.bustLine;
  const neckPoint = at(-c.neckWidth, -c.frontNeckUp);
  const neckCentre = at(0, -c.frontNeckUp + c.neckWidth + 5);
  const waistCentre = at(0, waistY);
  const sideWaist = at(-c.sideFront, waistY);
  const underarm = at(-c.sideFront, 0);
  const bust = at(-(c.chestWidth / 2 + 7), 0);
  const shoulder = add(neckPoint, scale(SHOULDER, shoulderLength));

  // The armhole dart: its lower leg from the bust point to the guide point, its upper leg turned up by the dart's angle.
  const guide = at(-c.guide, guideLevel(c));
  const turn = rotationByAngle(bust, c.dartAngle);
  const guideUp = applyTo(turn, guide);
  const diagonal = (bisector(c) + 5) / Math.sqrt(2);
  const armholeGuide = at(-c.guide - diagonal, -diagonal);

  // Square to the shoulder, touching near the chest-width line, and smooth where the dart will have closed.
  const upper = [curve(guideUp, scale(rotated(c.dartAngle, at(0, 1)), -1), shoulder, scale(INWARD, -1))];
  const lower = [
    curve(underarm, at(1, 0), armholeGuide, scale(SLANT, -1)),
    curve(armholeGuide, scale(SLANT, -1), guide, at(0, -1)),
  ];
  const neckline = [
    cubic(
      neckPoint,
      add(neckPoint, scale(NECK_START, 0.56 * (c.neckWidth + 5))),
      at(-0.52 * c.neckWidth, neckCentre.y),
      neckCentre,
    ),
  ];

  const edges = [
    edge('centre-front', 'centre-front', 'centre', [line(neckCentre, waistCentre)]),
    edge('right/waist', 'waist', 'right', [line(waistCentre, sideWaist)]),
    edge('right/side', 'side', 'right', [line(sideWaist, underarm)], 'back/side'),
    edge('armhole/below', 'armhole', 'right', lower),
    edge('armhole/leg-lower', 'dart-leg', 'right', [line(guide, bust)], 'armhole/leg-upper', 'armhole'),
    edge('armhole/leg-upper', 'dart-leg', 'right', [line(bust, guideUp)], 'armhole/leg-lower', 'armhole'),
    edge('armhole/above', 'armhole', 'right', upper),
    edge('right/shoulder', 'shoulder', 'right', [line(shoulder, neckPoint)], 'back/shoulder'),
    edge('right/neckline', 'neckline', 'right', neckline),
  ];
  const landmarks = {
    'right/bust-point': bust,
    'right/neck-point': neckPoint,
    'right/shoulder-point': shoulder,
    'right/underarm': underarm,
    'right/side-waist': sideWaist,
    'neck-centre': neckCentre,
    'waist-centre': waistCentre,
  };
  return moveDartToSide(sheet('front', edges, landmarks), bust, waistY);
}

const rotated = (angle: number, p: Point): Point => applyTo(rotationByAngle(at(0, 0), angle), p);
