import type { Lesson } from '../types.ts';
import { lessonFrom } from './from-rules.ts';
import { KITS } from './kits/index.ts';
import type { DrillWords } from './to-work.ts';
import type { Variant } from './types.ts';

export { DRILL_CONTENT, drillId, type DrillWords } from './to-work.ts';
export type { DrillStepId } from './steps.ts';

/** The drill as a lesson, by the rules of its kind (`lessonFrom`). Pure. */
export const drillLesson = (variant: Variant, words: DrillWords): Lesson =>
  lessonFrom(variant, KITS[variant.drill.exercise], words);
