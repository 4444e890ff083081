import { drawCurve } from './draw-curve.ts';
import { register } from './known.ts';

/** A line in one stroke of the hand. */
export const STROKE = register({ 'draw-curve': drawCurve });
