import '../../recipe/commands/line.ts';
import { connect } from './connect.ts';
import { drawCurve } from './draw-curve.ts';
import { drawLine } from './draw-line.ts';
import { register } from './known.ts';
import { notch, removeNotch } from './notch.ts';
import { openOut } from './open-out.ts';

/** The tools for what is drawn on the opened front. */
export const LINE = register({
  'open-out': openOut,
  'draw-line': drawLine,
  'draw-curve': drawCurve,
  notch,
  'remove-notch': removeNotch,
  connect,
});
