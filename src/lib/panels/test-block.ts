import { FIGURES } from '../pattern/figures.ts';
import type { LessonInput } from '../machines/lesson-context.ts';
// A test may lie on any demo figure: the page holds the drafted block of the lesson's own only.
import '../recipe/start.ts';
import type { BlockChoice } from '../recipe/types.ts';

/**
 * The block of the next test after one on `block`: the same form of the next demo figure, so that no number that was read in a mark
 * can be carried over.
 */
export function blockAfter(block: BlockChoice): BlockChoice {
  const codes = Object.keys(FIGURES);
  const at = 'figure' in block ? codes.indexOf(block.figure) : -1;
  return { figure: codes[(at + 1) % codes.length]!, ...(block.form !== undefined && { form: block.form }) };
}

/** What is kept of a test, to go on with: one that was handed in begins anew, on the next figure. */
export function testOf<Kept extends LessonInput>(kept: Kept | undefined): Kept | undefined {
  // No step of a lesson has such an id: so a test is kept that is over.
  if (kept?.step !== '') return kept;
  return { ...kept, attempt: { ...kept.attempt, block: blockAfter(kept.attempt.block) } };
}
