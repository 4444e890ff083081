import { checkAttempt, parseAttempt, type Parsed } from '../recipe/parse.ts';
import type { Problem } from '../recipe/problem.ts';
import type { Attempt } from '../recipe/types.ts';
import { blockOf } from './block.ts';
import type { Lesson } from './types.ts';

/** What a file might say of its own mark. None of it is believed. */
const CLAIMS: readonly string[] = ['claim', 'findings', 'mark', 'marks', 'score', 'verdict', 'verdicts'];

/** An attempt as it was handed in; `claimed`: its file said something of its own mark, which was left unread. */
export interface HandedIn {
  readonly attempt: Attempt;
  readonly claimed: boolean;
}

/** Reads an attempt that somebody hands in. As `parseAttempt`, but that what the file claims of its mark is passed over. */
export function readHandedIn(text: string): Parsed<HandedIn> {
  const parsed = parseAttempt(text.trim());
  if ('ok' in parsed) return { ok: { attempt: parsed.ok, claimed: false } };
  if (!parsed.problems.every(({ path }) => CLAIMS.includes(path))) return parsed;
  const data = JSON.parse(text) as Record<string, unknown>;
  const rest = Object.fromEntries(Object.entries(data).filter(([key]) => !CLAIMS.includes(key)));
  const again = checkAttempt(rest);
  return 'ok' in again ? { ok: { attempt: again.ok, claimed: true } } : again;
}

const isDrill = ({ id }: Lesson): boolean => id.startsWith('drill-');

/**
 * What keeps an attempt from being marked by this lesson's rules, as far as the file is concerned; nothing when it can be. An attempt that
 * is handed in is of a demo figure: a person's own measures are not in it. A drill is one exercise, on its own block, and was the same
 * only under the same rules; a lesson marks older attempts by what it asks for now.
 */
export function misfit(attempt: Attempt, lesson: Lesson): Problem | undefined {
  const { block, fabric } = attempt;
  if ('measures' in block)
    return {
      path: 'block',
      expected: 'a demo figure, F1 to F5: an attempt that is handed on holds nobody’s own measures',
      found: 'own measures',
    };
  const { content } = attempt.lesson;
  if (isDrill(lesson) ? content !== lesson.content : content > lesson.content)
    return {
      path: 'lesson.content',
      expected: isDrill(lesson) ? `${lesson.content}` : `${lesson.content} at most`,
      found: content > lesson.content ? `${content}, from a newer version of Pin & Pivot` : `${content}`,
    };
  const wanted = blockOf(lesson);
  if (block.form !== wanted.form)
    return { path: 'block.form', expected: wanted.form ?? 'nothing', found: block.form ?? 'nothing' };
  if (!isDrill(lesson)) return undefined;
  if (block.figure !== lesson.figure)
    return { path: 'block.figure', expected: lesson.figure, found: block.figure };
  if (!lesson.fabrics.includes(fabric))
    return { path: 'fabric', expected: lesson.fabrics.join(' or '), found: fabric };
  return undefined;
}
