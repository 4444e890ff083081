import { register } from './known.ts';
import { overlay } from './overlay.ts';

/** What is laid over the block to prove that nothing was lost. */
export const PROOF = register({ overlay });
