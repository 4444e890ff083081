import { radians } from '../geometry/trig.ts';
import type { Tolerance } from './types.ts';

/** The paper is half of the full size. */
export const HALF = 0.5;

/**
 * A ruler on the half-scale paper is read to 1/32 in, half of its sixteenth: 0.8 mm to the full micrometre (25.4 / 32 = 0.79375), and 1/16 in of the
 * garment, as careful work is (trade notes; that half scale halves it is derived).
 */
export const RULER: Tolerance = { value: 25.4 / 32, reason: 'half-scale-ruler' };
/** A protractor is read to a degree, rad. */
export const PROTRACTOR: Tolerance = { value: radians(1), reason: 'protractor' };
