import type { Point } from '../geometry/types.ts';
import { choiceWords } from '../strings/table.ts';
import type { Label } from './labels.ts';

/** What the learner pointed out, by its name, at its place in px; once it is no longer `asked` for it only helps, and gives way to what else is written. */
export const pointedLabels = (
  identified: Readonly<Record<string, Point>>,
  toScreen: (p: Point) => Point,
  asked: boolean,
): readonly Label[] =>
  Object.entries(identified).map(([what, p]) => ({
    id: `i ${what}`,
    text: choiceWords('what', what),
    at: toScreen(p),
    tone: asked ? 'name' : 'soft',
    leads: true,
  }));
