import { parseLesson } from '../lib/lessons/parse.ts';
import type { Lesson } from '../lib/lessons/types.ts';

const heads = import.meta.glob<unknown>('/lessons/*/lesson.json', { eager: true, import: 'default' });
const steps = import.meta.glob<unknown>('/lessons/*/*/step.json', { eager: true, import: 'default' });

/** All lessons in this project's `lessons` folder; read while the site is built, never in the browser. Throws on a faulty one. */
export function allLessons(): readonly Lesson[] {
  return Object.entries(heads).map(([path, head]) => {
    const folder = path.slice(0, path.lastIndexOf('/') + 1);
    const own = Object.entries(steps).filter(([step]) => step.startsWith(folder));
    const parsed = parseLesson(
      head,
      own.map(([, step]) => step),
    );
    if ('ok' in parsed) return parsed.ok;
    const faults = parsed.problems.map((p) => `${p.path}: expected ${p.expected}, found ${p.found}`);
    throw new Error(`${path} cannot be used:\n${faults.join('\n')}`);
  });
}
