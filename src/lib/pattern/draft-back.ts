import type { Point } from '../geometry/types.ts';
import type { Piece } from './types.ts';
import type { Measures } from './block.ts';
import { add, scale } from '../geometry/point.ts';
import { line } from '../geometry/segment.ts';
import { type Construction, bisector } from './construction.ts';
import { NECK_ANGLE, at, curve, edge, heading, piece, sheet } from './draft-shapes.ts';

/** Room between front and back where they lie side by side, mm (ours). */
const BESIDE = 80;
/** The back shoulder slopes 18° (Bunka, memory). */
const SHOULDER = heading(18);
const INWARD = heading(18 + 90);
const NECK_END = heading(18 + (180 - NECK_ANGLE) + 180);
const SLANT = heading(45);

/** The half back, with its shoulder `shoulderLength` mm long. */
export function draftBack(m: Measures, c: Construction, shoulderLength: number): Piece {
  const left = -c.halfWidth - BESIDE;
  const p = (x: number, y: number): Point => at(left + x, y);
  const waistY = m.napeToWaist - c.bustLine;
  const nape = p(0, -c.bustLine);
  const neckWidth = c.neckWidth + 2;
  const neckPoint = p(neckWidth, -c.bustLine - neckWidth / 3);
  const shoulder = add(neckPoint, scale(SHOULDER, shoulderLength));
  const underarm = p(c.sideBack, 0);
  const sideWaist = p(c.sideBack, waistY);
  const waistCentre = p(0, waistY);
  const touch = p(c.backWidth, -(c.bustLine - 80) / 2);
  const diagonal = (bisector(c) + 8) / Math.sqrt(2);
  const armholeGuide = p(c.backWidth + diagonal, -diagonal);

  // Level at centre back, and at the shoulder the angle that makes a straight run with the front's.
  const neckline = [curve(nape, at(1, 0), neckPoint, NECK_END, 0.4)];
  const armhole = [
    curve(shoulder, INWARD, touch, at(0, 1)),
    curve(touch, at(0, 1), armholeGuide, SLANT),
    curve(armholeGuide, SLANT, underarm, at(1, 0)),
  ];
  const edges = [
    edge('back/centre-back', 'centre-back', 'centre', [line(waistCentre, nape)]),
    edge('back/neckline', 'neckline', 'centre', neckline),
    edge('back/shoulder', 'shoulder', 'centre', [line(neckPoint, shoulder)], 'right/shoulder'),
    edge('back/armhole', 'armhole', 'centre', armhole),
    edge('back/side', 'side', 'centre', [line(underarm, sideWaist)], 'right/side-upper'),
    edge('back/waist', 'waist', 'centre', [line(sideWaist, waistCentre)]),
  ];
  return piece(
    'back',
    sheet('back', edges, {
      'back/neck-centre': nape,
      'back/neck-point': neckPoint,
      'back/shoulder-point': shoulder,
      'back/underarm': underarm,
      'back/side-waist': sideWaist,
      'back/waist-centre': waistCentre,
    }),
    [],
  );
}
