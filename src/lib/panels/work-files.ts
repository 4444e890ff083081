import { attemptOf } from '../machines/lesson.ts';
import { LARGEST_FILE, readPicked, saveFile } from '../progress/files.ts';
import { COPIED } from '../strings/attempt.ts';
import { announce } from '../table/announcer.ts';
import type { LessonSession } from './session.svelte.ts';

/** Offers the attempt as a file. */
export async function saveWork(session: LessonSession): Promise<void> {
  saveFile(`${session.lesson.id}.attempt.json`, await session.text());
}

/** Opens a file that was picked; one that is refused is told by the session, and changes nothing. */
export async function openWork(session: LessonSession, file: File): Promise<void> {
  const text = await readPicked(file);
  if (text !== undefined) return session.open(text);
  const expected = `a file of at most ${LARGEST_FILE} bytes`;
  session.problems = [{ path: '', expected, found: `${file.size} bytes` }];
}

/**
 * Copies the attempt as text, to be pasted elsewhere; `tell` gets what came of it, and nothing once it has been there for a while. Own
 * measures are never copied. Never rejects.
 */
export async function copyWork(session: LessonSession, tell: (text: string) => void): Promise<void> {
  if (!session.snapshot) return;
  const said = await copied(session);
  tell(said);
  announce(said);
  setTimeout(() => tell(''), 10_000);
}

async function copied(session: LessonSession): Promise<string> {
  const { snapshot } = session;
  if (snapshot && 'measures' in attemptOf(snapshot.context).block) return COPIED.own;
  try {
    await navigator.clipboard.writeText(await session.text());
    return COPIED.done;
  } catch {
    return COPIED.failed;
  }
}
