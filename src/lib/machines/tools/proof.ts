import '../../recipe/commands/proof.ts';
import { register } from './known.ts';
import { overlay } from './overlay.ts';

/** The tool that lays pieces over the block. */
export const PROOF = register({ overlay });
