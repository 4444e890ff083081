import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { gradeLesson } from '../../src/lib/grading/grade.ts';
import { progressToText, type Progress } from '../../src/lib/progress/progress.ts';
import { parseProgress } from '../../src/lib/progress/record.ts';
import { progressStore, type Backend } from '../../src/lib/progress/store.ts';
import type { Attempt } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from '../recipe/sample.ts';

const lesson = loadLesson('slanted-seam')!;
const whole = sampleAttempt('F3', 'woven');
const after = (count: number): Attempt => ({ ...whole, commands: whole.commands.slice(0, count) });
const kept = (attempt: Attempt): Progress => ({
  attempt,
  step: attempt.commands.at(-1)?.step ?? 'read-the-block',
  flagged: ['notches'],
  hints: { 'style-line': 2 },
  demonstrationSeen: true,
});
const unexpected = (notice: unknown): never => {
  throw new Error(JSON.stringify(notice));
};

describe('stopped after any command and come back to', () => {
  it('the record gives the same attempt, and that the same marks', () => {
    for (let n = 0; n <= whole.commands.length; n++) {
      const read = parseProgress(progressToText(kept(after(n))));
      if (!('ok' in read)) throw new Error(`after ${n} commands: ${JSON.stringify(read.problems)}`);
      expect(read.ok).toEqual(kept(after(n)));
      expect(gradeLesson(lesson, read.ok.attempt)).toEqual(gradeLesson(lesson, after(n)));
    }
  });

  it('in the middle of writing, what comes back is the record before or the new one, never a mix', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.nat(whole.commands.length), { minLength: 1, maxLength: 6 }),
        fc.nat(6),
        fc.boolean(),
        async (counts, dies, late) => {
          const disk = new Map<string, string>();
          let puts = 0;
          const backend: Backend = {
            get: async (key) => disk.get(key),
            // The machine stops in this transaction: all of it is on the disk, or nothing; nobody is told which.
            put: (key, text) => {
              puts++;
              if (puts <= dies || (puts === dies + 1 && late)) disk.set(key, text);
              return puts <= dies ? Promise.resolve() : new Promise(() => undefined);
            },
          };
          const store = progressStore(async () => backend, unexpected);
          for (const count of counts) void store.save(lesson.id, kept(after(count)));
          await new Promise((done) => setTimeout(done, 0));
          const again = await progressStore(async () => backend, unexpected).load(lesson.id);
          const whatWas = [undefined, ...counts.map((count) => kept(after(count)))];
          expect(whatWas).toContainEqual(again);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('a record that cannot be used is refused whole, with path, expected and found', () => {
  const text = progressToText(kept(after(12)));
  const data = JSON.parse(text) as Record<string, unknown>;
  const problemsOf = (record: string) => {
    const read = parseProgress(record);
    if ('ok' in read) throw new Error('it was taken');
    for (const { expected, found } of read.problems) expect(expected && found).toBeTruthy();
    return read.problems.map((problem) => problem.path);
  };

  it('cut off anywhere', () => {
    for (let n = 0; n < text.length; n += 7) expect(problemsOf(text.slice(0, n))).toEqual(['']);
  });

  it.each([
    ['another format', { format: 'x' }, 'format'],
    ['a newer version', { version: 2 }, 'version'],
    ['no step', { step: undefined }, 'step'],
    ['flags that are none', { flagged: [1] }, 'flagged[0]'],
    ['hints without a number', { hints: { 'style-line': 'all' } }, 'hints.style-line'],
    ['no attempt', { attempt: undefined }, 'attempt'],
    ['a recipe in place of an attempt', { attempt: { ...after(1), lesson: undefined } }, 'attempt.lesson'],
    ['a newer attempt', { attempt: { ...after(1), version: 2 } }, 'attempt.version'],
    ['an unknown command', { attempt: { ...after(0), commands: [{ do: 'fly' }] } }, 'attempt.commands[0].do'],
  ])('%s', (_, change, path) => {
    expect(problemsOf(JSON.stringify({ ...data, ...change }))).toContain(path);
  });
});
