import { smoothedCubics } from '../../geometry/smooth-joints.ts';
import { pointAt } from '../../geometry/segment.ts';
import type { Cubic, Point } from '../../geometry/types.ts';
import { refused } from '../pieces.ts';
import { layStyleLine } from '../style-lines.ts';
import type { DrawCurve } from '../types.ts';
import { kind } from './kind.ts';

/** Draws the style line as the curve that was fitted to a stroke of the hand, or draws it anew. */
export const drawCurve = kind<DrawCurve>({
  name: 'draw-curve',
  keys: { line: 'id', points: 'points', kinks: 'count' },
  apply: (work, { line, points, kinks }) => {
    if (points.length < 4 || points.length % 3 !== 1) return refused('not-a-curve', { count: points.length });
    return layStyleLine(work, line, points, (control) => {
      const chain = smoothedCubics(control);
      return { chain, points: shapingPoints(chain), kinks };
    });
  },
});

/** The points that a line of cubics is shaped by when it is taken up point by point: its joints and one in the middle of each cubic. */
const shapingPoints = (cubics: readonly Cubic[]): readonly Point[] => [
  cubics[0]!.a,
  ...cubics.flatMap((s) => [pointAt(s, 0.5), s.d]),
];
