import { addToCourse, readCourse } from '../progress/course.ts';
import { saveFile } from '../progress/files.ts';
import { indexedDbBackend } from '../progress/indexed-db.ts';
import { LARGEST_LOG, logToText, parseLog } from '../progress/log-file.ts';
import { ownLog } from '../progress/own-log.ts';
import type { Problem } from '../recipe/problem.ts';

/** What came of a file that was added. */
export type Added =
  | { readonly problems: readonly Problem[] }
  | {
      /** Marks and other things that were new here, and those that were here already. */
      readonly fresh: number;
      readonly had: number;
      /** Whether they are kept on the device; otherwise they last as long as the page. */
      readonly kept: boolean;
    };

/** Offers everything that happened, and what was achieved in the course, as a file. */
export async function saveProgress(now: Date): Promise<void> {
  const [{ log }, course] = await Promise.all([ownLog().load(), courseRecord()]);
  const two = (n: number): string => String(n).padStart(2, '0');
  const day = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  saveFile(`pin-and-pivot-${day}.progress.json`, logToText({ log, course }));
}

async function courseRecord(): Promise<Awaited<ReturnType<typeof readCourse>>> {
  try {
    return await readCourse(await indexedDbBackend());
  } catch {
    // Without storage there is none.
    return { done: {}, testedOut: {} };
  }
}

/** Adds a progress file to what is here. All or nothing; a file that is refused changes nothing. Never rejects. */
export async function addProgress(file: File): Promise<Added> {
  if (file.size > LARGEST_LOG)
    return {
      problems: [
        { path: '', expected: `a file of at most ${LARGEST_LOG} bytes`, found: `${file.size} bytes` },
      ],
    };
  const text = await file.text().catch(() => undefined);
  if (text === undefined)
    return { problems: [{ path: '', expected: 'a file', found: 'one that cannot be read' }] };
  const parsed = parseLog(text);
  if ('problems' in parsed) return parsed;
  const { log, course } = parsed.ok;
  const before = new Set((await ownLog().load()).log.map(({ id }) => id));
  const fresh = log.filter(({ id }) => !before.has(id)).length;
  const kept = await ownLog().add(log);
  const courseKept = await addCourse(course);
  return { fresh, had: log.length - fresh, kept: kept && courseKept };
}

async function addCourse(course: Parameters<typeof addToCourse>[1]): Promise<boolean> {
  try {
    await addToCourse(await indexedDbBackend(), course);
    return true;
  } catch {
    return false;
  }
}
