import { replayDocument } from '../../../src/lib/recipe/document.ts';
import { parseRecipe } from '../../../src/lib/recipe/parse.ts';

/** What `npm run -s replay` prints for a recipe's text. Bundled into a page, and called in Node: the same lines in both. */
export function replayText(text: string): string {
  const parsed = parseRecipe(text);
  if ('problems' in parsed) throw new Error(JSON.stringify(parsed.problems));
  return JSON.stringify(replayDocument(parsed.ok));
}
