import { describe, expect, it } from 'vitest';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { drillLesson } from '../../src/lib/lessons/drills/lesson.ts';
import { EXERCISES, SCALES, type Drill, type ExerciseId } from '../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { misfit, readHandedIn } from '../../src/lib/lessons/handed-in.ts';
import type { Lesson } from '../../src/lib/lessons/types.ts';
import { drillOfId } from '../../src/lib/practice/drill-skills.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import type { Attempt } from '../../src/lib/recipe/types.ts';
import { drillWords } from '../../src/lib/strings/drills.ts';
import { courseAttempt, pass } from '../golden/course/case.ts';

const lesson = loadLesson('waist-to-side')!;
const attempt = courseAttempt(lesson, pass('move', 'whole'));
const text = toText(attempt);
const withKeys = (keys: object): string => JSON.stringify({ ...attempt, ...keys });
const problemsOf = (of: string) => {
  const read = readHandedIn(of);
  return 'problems' in read ? read.problems : [];
};

describe('reading what is handed in', () => {
  it('gives the attempt, also with blanks and a byte order mark round its text', () => {
    for (const one of [text, `\uFEFF\n ${text}\n\n`])
      expect(readHandedIn(one)).toEqual({ ok: { attempt, claimed: false } });
  });

  it('passes over what the file claims of its own mark', () => {
    const claims = { verdict: 'accepted', mark: { verdict: 'accepted', findings: [] }, score: 100 };
    expect(readHandedIn(withKeys(claims))).toEqual({ ok: { attempt, claimed: true } });
  });

  it('refuses any other key, and a claim inside of a command', () => {
    expect(problemsOf(withKeys({ verdict: 'accepted', name: 'somebody' })).map(({ path }) => path)).toContain(
      'name',
    );
    const commands = attempt.commands.map((c) => ({ ...c, verdict: 'accepted' }));
    expect(problemsOf(withKeys({ commands }))[0]).toMatchObject({ path: 'commands[0].verdict' });
  });

  it('says path, expected and found of a text that is cut off, newer or hostile, and never throws', () => {
    for (let end = 0; end < text.length - 2; end += 37)
      expect(problemsOf(text.slice(0, end)).length, `${end}`).toBeGreaterThan(0);
    expect(problemsOf(withKeys({ version: 2 }))).toEqual([
      { path: 'version', expected: '1', found: '2, from a newer version of Pin & Pivot' },
    ]);
    expect(problemsOf(text.replace('{', '{"__proto__": {"verdict": 1},')).length).toBeGreaterThan(0);
    expect(problemsOf('[]')[0]).toMatchObject({ path: '', expected: 'an object' });
  });
});

describe('whether an attempt fits its lesson', () => {
  const drill: Drill = { exercise: 'slash', seed: 77, fabric: 'woven', band: 'usual', hints: 3 };
  const ofDrill = drillLesson(variantOf(drill), drillWords('mm'));
  const fresh = (of: Lesson): Attempt => ({
    ...attempt,
    lesson: { id: of.id, content: of.content },
    block: blockOf(of),
    fabric: of.fabrics[0]!,
    commands: [],
  });

  it('it does on any demo figure, and one of an earlier content of the lesson', () => {
    const form = lesson.form === undefined ? {} : { form: lesson.form };
    for (const figure of ['F1', 'F2', 'F3', 'F4', 'F5'])
      expect(misfit({ ...attempt, block: { figure, ...form } }, lesson)).toBeUndefined();
    expect(misfit({ ...attempt, lesson: { id: lesson.id, content: 0 } }, lesson)).toBeUndefined();
    expect(misfit(fresh(ofDrill), ofDrill)).toBeUndefined();
  });

  it('it does not when it holds a person’s own measures, and they are not repeated', () => {
    const measures = { bust: 911, waist: 733, napeToWaist: 402 };
    const problem = misfit({ ...attempt, block: { measures } }, lesson);
    expect(problem?.path).toBe('block');
    expect(JSON.stringify(problem)).not.toMatch(/911|733|402/);
  });

  it('it does not when it is of a newer content, or on another form of the block', () => {
    const newer = { ...attempt, lesson: { id: lesson.id, content: lesson.content + 1 } };
    expect(misfit(newer, lesson)).toEqual({
      path: 'lesson.content',
      expected: `${lesson.content} at most`,
      found: `${lesson.content + 1}, from a newer version of Pin & Pivot`,
    });
    const block = { figure: lesson.figure, form: 'two-dart' } as const;
    expect(misfit({ ...attempt, block }, lesson)?.path).toBe('block.form');
  });

  it('of a drill it does only on the drill’s own block, cloth and content: all else is another exercise', () => {
    const right = fresh(ofDrill);
    const figure = ofDrill.figure === 'F1' ? 'F2' : 'F1';
    expect(misfit({ ...right, block: { ...right.block, figure } }, ofDrill)?.path).toBe('block.figure');
    expect(misfit({ ...right, fabric: 'knit' }, ofDrill)?.path).toBe('fabric');
    const older = { ...right, lesson: { id: ofDrill.id, content: ofDrill.content - 1 } };
    expect(misfit(older, ofDrill)?.path).toBe('lesson.content');
  });

  it.each(EXERCISES)(
    'of the kind %s only under the rules that it was made for, which change for each kind by itself',
    (exercise) => {
      const lesson = drillLesson(variantOf({ ...drill, exercise }), drillWords('mm'));
      // Since notches and leftover are asked for, the fold at centre back, a sewn point in its own step only, and a grainline on its piece:
      // written down when that came.
      const changed: Partial<Record<ExerciseId, number>> = {
        finish: 2,
        line: 2,
        parallel: 2,
        princess: 2,
        ready: 3,
      };
      expect(lesson.content).toBe(changed[exercise] ?? 1);
      const older = { ...fresh(lesson), lesson: { id: lesson.id, content: lesson.content - 1 } };
      expect(misfit(older, lesson)).toEqual({
        path: 'lesson.content',
        expected: `${lesson.content}`,
        found: `${lesson.content - 1}`,
      });
    },
  );

  it('every drill can be told from the id that its attempts hold', () => {
    for (const exercise of EXERCISES)
      for (const scale of [undefined, ...SCALES]) {
        const one: Drill = { ...drill, exercise, ...(scale && { scale }) };
        const { id } = drillLesson(variantOf(one), drillWords('mm'));
        expect(drillOfId(id)).toEqual(one);
      }
    for (const id of ['drill-', 'drill-slash-77', 'waist-to-side', 'drill-slash-77-silk-usual-3'])
      expect(drillOfId(id)).toBeUndefined();
  });
});
