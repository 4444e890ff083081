import { stepCause, toldBy } from '../../../src/lib/lessons/causes/step-cause.ts';
import type { LessonAttempt } from './simulate-lessons.ts';

/** All causes that a learner reads under the mark of a step: those of the findings, and the one beside them. */
export function namedIn({ step, replayed, mark, attempt }: LessonAttempt): readonly string[] {
  const found = stepCause(step, replayed, mark, attempt);
  return [...toldBy(mark), ...(found.kind === 'cause' ? [found.cause.code] : [])];
}
