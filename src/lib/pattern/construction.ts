import type { Measures } from './block.ts';
import { radians } from '../geometry/trig.ts';

/*
 * The adult-woman prototype of Bunka Fashion College, Fundamentals of Garment Design (memory), in mm. Of its waist darts none
 * is drawn: the suppression stays as ease. Its back shoulder dart is taken out of the back shoulder's length but for the ease.
 * What the three measurements do not give (how the curves leave their ends) is ours and is said where it stands.
 */

/** The lines and lengths of the draft in mm; x from centre front (front, negative) or from centre back (back, positive). */
export interface Construction {
  readonly halfWidth: number;
  readonly bustLine: number;
  readonly backWidth: number;
  readonly frontNeckUp: number;
  readonly chestWidth: number;
  readonly neckWidth: number;
  /** radians */
  readonly dartAngle: number;
  readonly suppression: number;
  /** The guide line outside the chest-width line, from centre front. */
  readonly guide: number;
  /** Side line, from centre front and from centre back. */
  readonly sideFront: number;
  readonly sideBack: number;
}

/** The draft's formulas (Bunka, memory), from the body's measures in mm. */
export function construction({ bust, waist }: Measures): Construction {
  const halfWidth = bust / 2 + 60;
  const backWidth = bust / 8 + 74;
  const chestWidth = bust / 8 + 62;
  const guide = chestWidth + bust / 32;
  const sideBack = (backWidth + halfWidth - guide) / 2;
  return {
    halfWidth,
    bustLine: bust / 12 + 137,
    backWidth,
    frontNeckUp: bust / 5 + 83,
    chestWidth,
    neckWidth: bust / 24 + 34,
    dartAngle: radians(bust / 40 - 2.5),
    suppression: halfWidth - (waist / 2 + 30),
    guide,
    sideFront: halfWidth - sideBack,
    sideBack,
  };
}

/** How far the armhole's guide points lie out on their bisectors, before the addition. */
export const bisector = (c: Construction): number => (c.halfWidth - c.guide - c.backWidth) / 6;

/** The level of the guide point of the armhole: 5 mm below the middle between bust line and 80 mm below the nape. */
export const guideLevel = (c: Construction): number => -((c.bustLine - 80) / 2 - 5);
