import { connect } from './connect.ts';
import { register } from './known.ts';
import { notch } from './notch.ts';
import { removeNotch } from './remove-notch.ts';

/** What is marked on the style line and drawn to it before it is cut. */
export const MARKS = register({ notch, 'remove-notch': removeNotch, connect });
