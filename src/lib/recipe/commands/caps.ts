import { cap } from './cap.ts';
import { register } from './known.ts';
import { trueLegs } from './true-legs.ts';

/** Finishing a dart: its legs, its cap. */
export const CAPS = register({ 'true-legs': trueLegs, cap });
