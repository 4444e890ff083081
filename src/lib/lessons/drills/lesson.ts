import type { Lesson } from '../types.ts';
import { lessonFrom, type DrillWords } from './from-rules.ts';
import { KITS } from './kits/index.ts';
import type { Variant } from './types.ts';

export { DRILL_CONTENT, drillId, type DrillWords } from './from-rules.ts';
export type { DrillStepId } from './steps.ts';

/** The drill as a lesson, by the rules of its kind (`lessonFrom`). Pure. */
export const drillLesson = (variant: Variant, words: DrillWords): Lesson =>
  lessonFrom(variant, KITS[variant.drill.exercise].rules, words);
