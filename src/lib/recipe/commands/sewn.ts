import { backOff } from './back-off.ts';
import { cap } from './cap.ts';
import { register } from './known.ts';
import { trueLegs } from './true-legs.ts';

/** Finishing a dart: its sewn point, its legs, its cap. */
export const SEWN = register({ 'back-off': backOff, 'true-legs': trueLegs, cap });
