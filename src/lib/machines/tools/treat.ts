import '../../recipe/commands/treat.ts';
import { bridge } from './bridge.ts';
import { copy } from './copy.ts';
import { register } from './known.ts';
import { ease, renotch, takeOut, trueBack } from './leftover.ts';

/** The tools for fullness that is left over in a seam. */
export const TREAT = register({ copy, bridge, ease, 'take-out': takeOut, true: trueBack, renotch });
