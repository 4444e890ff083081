import { connect } from './connect.ts';
import { drawCurve } from './draw-curve.ts';
import { drawLine } from './draw-line.ts';
import { register } from './known.ts';
import { notch } from './notch.ts';
import { openOut } from './open-out.ts';
import { removeNotch } from './remove-notch.ts';

/** What is drawn on the opened front before anything is cut. */
export const LINE = register({
  'open-out': openOut,
  'draw-line': drawLine,
  'draw-curve': drawCurve,
  notch,
  'remove-notch': removeNotch,
  connect,
});
