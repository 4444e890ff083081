import { readFileSync } from 'node:fs';
import { gradeLesson } from '../../src/lib/grading/grade.ts';
import '../../src/lib/recipe/commands/index.ts';
import type { StepRule } from '../../src/lib/grading/types.ts';
import type { Attempt } from '../../src/lib/recipe/types.ts';

/** What one run of `lesson-pass` reports, one entry a pass. */
export interface Passes {
  /** Attempts a second of processor time (all threads of the process), and of the clock on the wall. */
  readonly perCpuSecond: readonly number[];
  readonly perSecond: readonly number[];
  /** Attempts that were not accepted in every step, and how many steps were marked in all. */
  readonly failed: readonly string[];
  readonly marks: number;
}

/**
 * The child process: `lesson-pass <lesson.json> <attempts.json> <passes>`. Each pass parses the attempts anew, outside the
 * time that counts, so that nothing kept by the identity of an object outlives a pass.
 */
const [lessonFile, attemptsFile, passes] = process.argv.slice(2);
const lesson = JSON.parse(readFileSync(lessonFile!, 'utf8')) as { readonly steps: readonly StepRule[] };
const text = readFileSync(attemptsFile!, 'utf8');
const perCpuSecond: number[] = [];
const perSecond: number[] = [];
const failed: string[] = [];
let marks = 0;
for (let pass = 0; pass < Number(passes); pass++) {
  const attempts = JSON.parse(text) as readonly Attempt[];
  const cpu = process.cpuUsage();
  const clock = performance.now();
  for (const attempt of attempts) {
    for (const mark of gradeLesson(lesson, attempt)) {
      marks += 1;
      if (pass === 0 && mark.verdict !== 'accepted')
        failed.push(`attempt ${attempt.seed}: ${mark.step} ${mark.verdict}`);
    }
  }
  perSecond.push((1000 * attempts.length) / (performance.now() - clock));
  const { user, system } = process.cpuUsage(cpu);
  perCpuSecond.push((1e6 * attempts.length) / (user + system));
}
console.log(JSON.stringify({ perCpuSecond, perSecond, failed, marks } satisfies Passes));
