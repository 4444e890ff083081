import { register } from './known.ts';
import { place } from './place.ts';
import { separate } from './separate.ts';
import { slash } from './slash.ts';
import { turn } from './turn.ts';

/** Cutting, turning, taking apart. */
export const CUT = register({ slash, turn, separate, place });
