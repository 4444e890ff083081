import { connect } from './connect.ts';
import { drawLine } from './draw-line.ts';
import { register } from './known.ts';
import { notch } from './notch.ts';
import { removeNotch } from './remove-notch.ts';

/** What is drawn on the front before anything is cut. */
export const LINE = register({
  'draw-line': drawLine,
  notch,
  'remove-notch': removeNotch,
  connect,
});
