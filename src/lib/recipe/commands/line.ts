import { drawLine } from './draw-line.ts';
import { register } from './known.ts';

/** The style line, point by point. */
export const LINE = register({ 'draw-line': drawLine });
