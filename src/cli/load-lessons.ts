import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseLesson } from '../lib/lessons/parse.ts';
import type { Lesson } from '../lib/lessons/types.ts';
import { jsonFault } from '../lib/recipe/json-fault.ts';

/** The project's `lessons` folder. */
export const LESSONS = fileURLToPath(new URL('../../lessons', import.meta.url));

/** A file of a lesson as data. Throws Error, with where it breaks, when it is no JSON. */
function read(folder: string, ...path: string[]): unknown {
  const text = readFileSync(join(folder, ...path), 'utf8');
  try {
    return JSON.parse(text);
  } catch {
    const fault = jsonFault(text);
    const where = fault ? ` at line ${fault.line}, column ${fault.column}` : '';
    throw new Error(
      `${path.join('/')}: expected ${fault?.expected ?? 'JSON'}, found ${fault?.found ?? 'none'}${where}`,
    );
  }
}

/** Ids of the lessons that a folder holds. */
export const lessonIds = (folder = LESSONS): string[] =>
  readdirSync(folder)
    .filter((id) => existsSync(join(folder, id, 'lesson.json')))
    .sort();

/** The folders of a lesson's steps, in order. */
export const stepFolders = (id: string, folder = LESSONS): string[] =>
  readdirSync(join(folder, id), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(folder, id, entry.name, 'step.json')))
    .map((entry) => entry.name)
    .sort();

/** One lesson from its folder; undefined when there is none of that id. Throws Error, with what is wrong, on a faulty one. */
export function loadLesson(id: string, folder = LESSONS): Lesson | undefined {
  if (!/^[a-z0-9-]+$/.test(id) || !existsSync(join(folder, id, 'lesson.json'))) return undefined;
  const steps = stepFolders(id, folder).map((name) => read(folder, id, name, 'step.json'));
  const parsed = parseLesson(read(folder, id, 'lesson.json'), steps);
  if ('ok' in parsed) return parsed.ok;
  const faults = parsed.problems.map((p) => `${p.path}: expected ${p.expected}, found ${p.found}`);
  throw new Error(`lesson ${id} cannot be used:\n${faults.join('\n')}`);
}
