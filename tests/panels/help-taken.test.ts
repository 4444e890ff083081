import { describe, expect, it } from 'vitest';
import { readHandedIn } from '../../src/lib/lessons/handed-in.ts';
import { helpBySteps } from '../../src/lib/panels/help-taken.ts';
import { parseAttempt } from '../../src/lib/recipe/parse.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import { helpSaid } from '../../src/lib/strings/attempt.ts';
import { sampleAttempt } from '../recipe/sample.ts';

const sample = sampleAttempt('F2', 'knit');
const steps = ['one', 'two', 'three', 'four'];

describe('help that travels with an attempt', () => {
  it('is what was taken here and what the opened file said, by step, and no step without any', () => {
    const said = [
      { step: 'one', hints: 2, shown: false },
      { step: 'two', hints: 0, shown: true },
      { step: 'gone', hints: 3, shown: true },
    ];
    expect(helpBySteps({ steps, said, hints: { one: 1, two: 1 }, shown: new Set(['three']) })).toEqual([
      { step: 'one', hints: 2, shown: false },
      { step: 'two', hints: 1, shown: true },
      { step: 'three', hints: 0, shown: true },
    ]);
    expect(helpBySteps({ steps, said: [], hints: {}, shown: new Set() })).toEqual([]);
  });

  it('is read back as it was written, and is no claim of a mark', () => {
    const help = [{ step: 'style-line', hints: 1, shown: true }];
    const attempt = { ...sample, help };
    expect(parseAttempt(toText(attempt))).toEqual({ ok: attempt });
    expect(readHandedIn(toText(attempt))).toEqual({ ok: { attempt, claimed: false } });
    // Files without it stay good, and are written as before.
    expect(parseAttempt(toText(sample))).toEqual({ ok: sample });
    expect(toText(sample)).not.toContain('help');
  });

  it('is refused with its place where it is none', () => {
    const path = (help: unknown): string | undefined => {
      const read = parseAttempt(JSON.stringify({ ...sample, help }));
      return 'problems' in read ? read.problems[0]?.path : undefined;
    };
    expect(path('much')).toBe('help');
    expect(path([{ step: 'a', hints: -1, shown: false }])).toBe('help[0].hints');
    expect(path([{ step: 'a', hints: 1.5, shown: false }])).toBe('help[0].hints');
    expect(path([{ step: 'a', hints: 1 }])).toBe('help[0].shown');
    expect(path([{ step: 'a', hints: 1, shown: false, by: 'somebody' }])).toBe('help[0].by');
  });

  it('is told as what the file says', () => {
    const help = [
      { step: 'one', hints: 2, shown: false },
      { step: 'two', hints: 0, shown: true },
    ];
    expect(helpSaid(help, (id) => `Step ${id}`)).toBe(
      'The file says: “Step one” with 2 hints; “Step two” after seeing it worked. That is its own word, and changes no mark.',
    );
  });
});
