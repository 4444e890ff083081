import '../../recipe/commands/cut.ts';
import { register } from './known.ts';
import { place } from './place.ts';
import { separate } from './separate.ts';
import { slash } from './slash.ts';
import { turn } from './turn.ts';

/** The tools for cutting, turning, taking apart. */
export const CUT = register({ slash, turn, separate, place });
