import '../../recipe/commands/open.ts';
import { register } from './known.ts';
import { openOut } from './open-out.ts';

/** The tool that mirrors the half. */
export const OPEN = register({ 'open-out': openOut });
