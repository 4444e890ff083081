import { smoothedCubics } from '../../geometry/smooth-joints.ts';
import { splinePoints } from '../../geometry/spline-points.ts';
import { refused } from '../pieces.ts';
import { layStyleLine } from '../style-lines.ts';
import type { DrawCurve } from '../types.ts';
import { kind } from './kind.ts';

/** Taken up point by point, the line moves by no more than about this, mm. */
const SHAPED = 1;

/** Draws the style line as the curve that was fitted to a stroke of the hand, or draws it anew. */
export const drawCurve = kind<DrawCurve>({
  name: 'draw-curve',
  keys: { line: 'id', points: 'points', kinks: 'count' },
  apply: (work, { line, points, kinks }) => {
    if (points.length < 4 || points.length % 3 !== 1) return refused('not-a-curve', { count: points.length });
    return layStyleLine(work, line, points, (control) => {
      const chain = smoothedCubics(control);
      return { chain, points: splinePoints(chain, SHAPED), kinks };
    });
  },
});
