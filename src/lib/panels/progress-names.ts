import type { Exercise } from '../progress/events.ts';

/** A lesson with what it and its steps are called. */
export interface NamedLesson {
  readonly id: string;
  readonly title: string;
  readonly steps: readonly { readonly id: string; readonly title: string }[];
}

/** What was worked on, in words; `old` when there is no such lesson or step any more. */
export function exerciseName(
  { kind, id }: Exercise,
  step: string,
  lessons: readonly NamedLesson[],
): { readonly text: string; readonly old: boolean } {
  const lesson = lessons.find((one) => one.id === id);
  const found = lesson?.steps.find((one) => one.id === step);
  if (lesson && found) return { text: `${lesson.title}: ${found.title}`, old: false };
  const word = step.replaceAll('-', ' ');
  if (kind === 'drill') return { text: `A drill: ${word}`, old: false };
  return { text: `${lesson?.title ?? id.replaceAll('-', ' ')}: ${word}`, old: true };
}

const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });

/** A day: 2 Mar 2026. `at` in ms. */
export const dayText = (at: number): string => DAY.format(at);
