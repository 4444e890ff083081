import { attemptOf } from '../machines/lesson-context.ts';
import { LARGEST_FILE, readPicked, saveFile } from '../progress/files.ts';
import { parseAttempt } from '../recipe/parse.ts';
import type { Problem } from '../recipe/problem.ts';
import { toText } from '../recipe/save.ts';
import { COPIED } from '../strings/attempt.ts';
import { announce } from '../table/announcer.ts';
import { withHelp } from './help-taken.ts';
import type { LessonSession } from './session.svelte.ts';

/** The attempt as a file's text, with the help that was taken. */
async function textOf(session: LessonSession): Promise<string> {
  await session.written;
  const context = session.snapshot?.context;
  return context ? toText(await withHelp(attemptOf(context), context, session.given)) : '';
}

/** Offers the attempt as a file. */
export async function saveWork(session: LessonSession): Promise<void> {
  saveFile(`${session.lesson.id}.attempt.json`, await textOf(session));
}

/** Opens a file that was picked; one that is refused is told by the session, and changes nothing. */
export async function openWork(session: LessonSession, file: File): Promise<void> {
  const text = await readPicked(file);
  if (text === undefined)
    return refuse(session, [
      { path: '', expected: `a file of at most ${LARGEST_FILE} bytes`, found: `${file.size} bytes` },
    ]);
  const parsed = parseAttempt(text);
  if ('problems' in parsed) return refuse(session, parsed.problems);
  const { id } = session.lesson;
  const found = parsed.ok.lesson.id;
  if (found !== id) return refuse(session, [{ path: 'lesson.id', expected: `an attempt of ${id}`, found }]);
  return session.lay(parsed.ok);
}
function refuse(session: LessonSession, problems: readonly Problem[]): void {
  session.problems = problems;
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
    await navigator.clipboard.writeText(await textOf(session));
    return COPIED.done;
  } catch {
    return COPIED.failed;
  }
}
