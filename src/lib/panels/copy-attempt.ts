import { toText } from '../recipe/save.ts';
import type { Attempt } from '../recipe/types.ts';
import { COPIED } from '../strings/attempt.ts';

/** Copies an attempt as text, to be pasted elsewhere; says what came of it. Own measures are never copied. Never rejects. */
export async function copyAttempt(attempt: Attempt): Promise<string> {
  if ('measures' in attempt.block) return COPIED.own;
  try {
    await navigator.clipboard.writeText(toText(attempt));
    return COPIED.done;
  } catch {
    return COPIED.failed;
  }
}
