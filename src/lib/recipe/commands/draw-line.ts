import { splineThrough } from '../../geometry/spline.ts';
import { layStyleLine } from '../style-lines.ts';
import type { DrawLine } from '../types.ts';
import { kind } from './kind.ts';

/** Draws the style line smoothly through its points, or draws it anew. */
export const drawLine = kind<DrawLine>({
  name: 'draw-line',
  keys: { line: 'id', points: 'points' },
  apply: (work, { line, points }) =>
    layStyleLine(work, line, points, (through) => ({ chain: splineThrough(through), points: through })),
});
