import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { blockAfter, testOf } from '../../src/lib/panels/test-block.ts';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import type { BlockChoice } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from '../recipe/sample.ts';

describe('the block of the next test', () => {
  it.each(lessonIds())('of %s goes round all demo figures in the form of the lesson', (id) => {
    const begun = blockOf(loadLesson(id)!);
    const met: BlockChoice[] = [];
    for (let block = blockAfter(begun); met.length < 5; block = blockAfter(block)) met.push(block);
    expect(met.map((block) => 'figure' in block && block.figure).sort()).toEqual(Object.keys(FIGURES));
    expect(met.map(({ form }) => form)).toEqual(Array(5).fill(begun.form));
    expect(met.at(-1)).toEqual(begun);
  });

  it('changes only once a test was handed in', () => {
    const attempt = sampleAttempt('F2', 'knit');
    const going = { attempt, step: 'notches' };
    expect(testOf(undefined)).toBe(undefined);
    expect(testOf(going)).toBe(going);
    expect(testOf({ attempt: { ...attempt, commands: [] }, step: '' })).toEqual({
      attempt: { ...attempt, commands: [], block: { ...attempt.block, figure: 'F3' } },
      step: '',
    });
  });
});
