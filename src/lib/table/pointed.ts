import type { Point } from '../geometry/types.ts';
import { choiceWords } from '../strings/strip.ts';
import type { Label } from './labels.ts';

/** What the learner pointed out, by its name, at its place in px. */
export const pointedLabels = (
  identified: Readonly<Record<string, Point>>,
  toScreen: (p: Point) => Point,
): readonly Label[] =>
  Object.entries(identified).map(([what, p]) => ({
    id: `i ${what}`,
    text: choiceWords('what', what),
    at: toScreen(p),
    tone: 'name',
    leads: true,
  }));
