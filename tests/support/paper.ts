import core from 'paper/dist/paper-core.js';
import type * as Paper from 'paper';

/**
 * Paper's core without its canvas, set up and typed: for curve lengths and crossings from outside the project. The
 * package types only its other entry, which asks Node for a canvas.
 */
export const paper = core as unknown as typeof Paper;
paper.setup(new paper.Size(1, 1));
