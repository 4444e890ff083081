import '../../recipe/commands/block.ts';
import { identify } from './identify.ts';
import { register } from './known.ts';
import { read } from './read.ts';

/** The tools for the block as it lies there. */
export const BLOCK = register({ identify, read });
