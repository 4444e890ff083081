import '../../recipe/commands/stroke.ts';
import { drawCurve } from './draw-curve.ts';
import { register } from './known.ts';

/** The tool that follows one stroke of the hand. */
export const STROKE = register({ 'draw-curve': drawCurve });
