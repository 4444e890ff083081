import '../../recipe/commands/line.ts';
import { connect } from './connect.ts';
import { drawLine } from './draw-line.ts';
import { register } from './known.ts';
import { notch, removeNotch } from './notch.ts';

/** The tools for what is drawn on the front. */
export const LINE = register({
  'draw-line': drawLine,
  notch,
  'remove-notch': removeNotch,
  connect,
});
