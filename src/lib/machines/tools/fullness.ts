import '../../recipe/commands/fullness.ts';
import type { ToolSpec } from '../tool.ts';
import { register } from './known.ts';

/** Written in the forms; nothing to take hold of. */
const fullness: ToolSpec = { id: 'fullness', targets: () => [], propose: () => undefined };
const partAtDarts: ToolSpec = { id: 'part-at-darts', targets: () => [], propose: () => undefined };
const smoothSeam: ToolSpec = { id: 'smooth-seam', targets: () => [], propose: () => undefined };

/** The tools for fullness at an edge and for seams through the bust point. */
export const FULLNESS = register({ fullness, 'part-at-darts': partAtDarts, 'smooth-seam': smoothSeam });
