import { addToCourse, type CourseRecord } from './course.ts';
import { indexedDbBackend } from './indexed-db.ts';

/** The day as the device counts days. */
function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

async function add(more: Partial<CourseRecord>): Promise<void> {
  try {
    await addToCourse(await indexedDbBackend(), more);
  } catch {
    // The lesson's own store says why nothing is kept.
  }
}

/** Keeps that every step of a lesson was accepted. Never rejects. */
export const noteDone = ({ id, content }: { readonly id: string; readonly content: number }): Promise<void> =>
  add({ done: { [id]: { on: today(), content } } });

/** Keeps that the test of lesson `by` was passed: it counts for that lesson and for those `before` it. Never rejects. */
export const noteTestedOut = (by: string, before: readonly string[]): Promise<void> =>
  add({ testedOut: Object.fromEntries([by, ...before].map((id) => [id, { on: today(), by }])) });
