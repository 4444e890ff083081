import { readCourse, type CourseRecord } from './course.ts';
import { indexedDbBackend } from './indexed-db.ts';
import { stepsIn } from './kept-steps.ts';

/** How far the learner is with a lesson. `step` counts from 0; `flagged` is how many steps were left, to come back to. */
export type Standing =
  | { readonly state: 'fresh' }
  | { readonly state: 'begun'; readonly step: number; readonly flagged: number }
  | { readonly state: 'done'; readonly on: string }
  | { readonly state: 'tested'; readonly on: string; readonly by: string };

interface Steps {
  readonly id: string;
  readonly steps: readonly string[];
}

/** How a lesson stands by what is kept of it. What is done stays done, also while it is worked on again. */
export function standingOf(
  { id, steps }: Steps,
  course: CourseRecord,
  kept: { readonly step: string; readonly flagged: readonly string[] } | undefined,
): Standing {
  const done = course.done[id];
  if (done) return { state: 'done', on: done.on };
  const tested = course.testedOut[id];
  if (tested) return { state: 'tested', ...tested };
  if (!kept) return { state: 'fresh' };
  return { state: 'begun', step: Math.max(0, steps.indexOf(kept.step)), flagged: kept.flagged.length };
}

/** How the learner stands in each lesson, by lesson id; empty where nothing can be read. Never rejects. */
export async function standings(lessons: readonly Steps[]): Promise<Readonly<Record<string, Standing>>> {
  try {
    const backend = await indexedDbBackend();
    const course = await readCourse(backend);
    const kept = await stepsIn(
      backend,
      lessons.map(({ id }) => id),
    );
    return Object.fromEntries(lessons.map((one) => [one.id, standingOf(one, course, kept[one.id])]));
  } catch {
    // No storage, or nothing readable in it: the map shows a fresh start, the lesson page says why.
    return {};
  }
}
