import '../../recipe/commands/line.ts';
import { drawLine } from './draw-line.ts';
import { register } from './known.ts';

/** The tool for the style line. */
export const LINE = register({ 'draw-line': drawLine });
