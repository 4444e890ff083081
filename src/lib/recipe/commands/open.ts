import { register } from './known.ts';
import { openOut } from './open-out.ts';

/** The half front becomes the whole one: some lessons begin with it. */
export const OPEN = register({ 'open-out': openOut });
