/**
 * Replays a recipe file and prints what it makes as one JSON document: `npm run -s replay -- <recipe file>`.
 * Exit status: 0 printed, 2 the file cannot be used (why goes to the error output).
 */
import { replayDocument } from '../lib/recipe/document.ts';
import { parseRecipe } from '../lib/recipe/parse.ts';
import { endWithReader } from './output.ts';
import { readText } from './read-file.ts';

const [file, ...more] = process.argv.slice(2);
if (file === undefined || more.length > 0) {
  console.error('Usage: npm run -s replay -- <recipe file>');
  process.exit(2);
}

const read = readText(file);
if ('unreadable' in read) {
  console.error(`${file}: ${read.unreadable}`);
  process.exit(2);
}

const parsed = parseRecipe(read.text);
if ('problems' in parsed) {
  for (const { path, expected, found } of parsed.problems) {
    console.error(`${file}: ${path === '' ? '' : `${path}: `}expected ${expected}, found ${found}`);
  }
  process.exit(2);
}

endWithReader();
process.stdout.write(`${JSON.stringify(replayDocument(parsed.ok))}\n`);
