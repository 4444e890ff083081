import '../../recipe/commands/marks.ts';
import { connect } from './connect.ts';
import { register } from './known.ts';
import { notch, removeNotch } from './notch.ts';

/** The tools for what is marked on the style line and drawn to it. */
export const MARKS = register({ notch, 'remove-notch': removeNotch, connect });
