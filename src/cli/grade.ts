import { pathToFileURL } from 'node:url';
import { gradeOne } from '../lib/grading/grade.ts';
import type { Finding, Verdict } from '../lib/grading/types.ts';
import type { Lesson } from '../lib/lessons/types.ts';
import { parseAttempt } from '../lib/recipe/parse.ts';
import type { Problem } from '../lib/recipe/problem.ts';
import { lessonIds, loadLesson } from './load-lessons.ts';
import { endWithReader } from './output.ts';
import { readText } from './read-file.ts';

/** What is printed for one file, as one line of JSON. */
export type Line = { readonly file: string; readonly verdict: Verdict } & (
  { readonly findings: readonly Finding[] } | { readonly problems: readonly Problem[] }
);

const refuse = (file: string, ...problems: readonly Problem[]): Line => ({
  file,
  verdict: 'notReady',
  problems,
});

/** Marks one step of an attempt file. A file that cannot be read, or is of another lesson, is refused and says why. */
export function gradeFile(file: string, lesson: Lesson, step: string): Line {
  const read = readText(file);
  if ('unreadable' in read) {
    return refuse(file, { path: '', expected: 'a file that can be read', found: read.unreadable });
  }
  const parsed = parseAttempt(read.text);
  if ('problems' in parsed) return refuse(file, ...parsed.problems);
  const attempt = parsed.ok;
  if (attempt.lesson.id !== lesson.id) {
    return refuse(file, { path: 'lesson.id', expected: lesson.id, found: attempt.lesson.id });
  }
  if (attempt.lesson.content > lesson.content) {
    const found = `${attempt.lesson.content}, from a newer version of the lesson`;
    return refuse(file, { path: 'lesson.content', expected: `at most ${lesson.content}`, found });
  }
  const { verdict, findings } = gradeOne(lesson, step, attempt);
  return { file, verdict, findings };
}

/** 0 when all are accepted, 1 when some need work, 2 when some are not ready or not readable. */
export function exitStatus(lines: readonly Line[]): 0 | 1 | 2 {
  if (lines.some((line) => line.verdict === 'notReady')) return 2;
  return lines.some((line) => line.verdict === 'needsWork') ? 1 : 0;
}

/** Runs the command line: `<lesson>/<step> <file...>`. Prints through `print`, complaints through `complain`; gives the exit status. */
export function run(
  args: readonly string[],
  print: (line: string) => void,
  complain: (line: string) => void,
): number {
  try {
    return grade(args, print, complain);
  } catch (error) {
    // A faulty lesson: no attempt can bring this about.
    complain(error instanceof Error ? error.message : String(error));
    return 2;
  }
}

function grade(
  args: readonly string[],
  print: (line: string) => void,
  complain: (line: string) => void,
): number {
  const [target = '', ...files] = args;
  const [lessonId = '', stepId = '', ...more] = target.split('/');
  if (lessonId === '' || stepId === '' || more.length > 0 || files.length === 0) {
    complain('Usage: npm run -s grade -- <lesson>/<step> <attempt file...>');
    return 2;
  }
  const lesson = loadLesson(lessonId);
  if (!lesson) {
    complain(`There is no lesson '${lessonId}'. There are: ${lessonIds().join(', ')}.`);
    return 2;
  }
  if (!lesson.steps.some((step) => step.id === stepId)) {
    complain(
      `The lesson has no step '${stepId}'. It has: ${lesson.steps.map((step) => step.id).join(', ')}.`,
    );
    return 2;
  }
  const lines: Line[] = [];
  for (const file of files) {
    const line = gradeFile(file, lesson, stepId);
    print(JSON.stringify(line));
    lines.push(line);
  }
  return exitStatus(lines);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  endWithReader();
  process.exitCode = run(process.argv.slice(2), console.log, console.error);
}
