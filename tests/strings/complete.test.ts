import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadLesson, lessonIds } from '../../src/cli/load-lessons.ts';
import { CAUSES } from '../../src/lib/strings/causes.ts';
import { FINDINGS } from '../../src/lib/strings/findings.ts';
import { REASONS } from '../../src/lib/strings/reasons.ts';
import { REFUSALS } from '../../src/lib/strings/refusals.ts';
import { explain } from '../../src/lib/strings/explain.ts';

const sources = (...folders: string[]): string =>
  folders
    .flatMap((folder) =>
      readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => `${folder}/${name}`),
    )
    .filter((path) => path.endsWith('.ts'))
    .map((path) => readFileSync(path, 'utf8'))
    .join('\n');

const all = (text: string, pattern: RegExp): string[] => [
  ...new Set([...text.matchAll(pattern)].map((m) => m[1]!)),
];

const grading = sources('src/lib/grading');

describe('every code has its words', () => {
  const codes = all(grading, /['`]([a-z]+(?:-[a-z]+)*\/[a-z]+(?:-[a-z]+)*)['`]/g).filter(
    (c) => !/^(right|left|back|strings)\//.test(c),
  );
  it('finds codes in the checks', () => expect(codes.length).toBeGreaterThan(40));
  it.each(codes)('finding %s', (code) => expect(FINDINGS).toHaveProperty([code]));

  it.each(all(grading, /\bcode: '([a-z-]+)'/g).filter((code) => !code.includes('/')))('cause %s', (code) => {
    expect({ ...CAUSES, ...REFUSALS }).toHaveProperty([code]);
  });

  it.each(all(grading, /reason: '([a-z-]+)'/g))('reason %s of a check', (code) =>
    expect(REASONS).toHaveProperty([code]),
  );

  it.each(all(sources('src/lib/pattern', 'src/lib/recipe'), /\b(?:refuse|refused)\('([a-z-]+)'/g))(
    'refusal %s',
    (code) => {
      expect(REFUSALS).toHaveProperty([code]);
    },
  );
});

describe.each(lessonIds())('the lesson %s', (id) => {
  const reasons = loadLesson(id)!.steps.flatMap((step) =>
    step.checks.flatMap((spec) => Object.values(spec.tolerances ?? {}).map((tolerance) => tolerance.reason)),
  );
  it.each([...new Set(reasons)])('gives a reason that can be said: %s', (reason) =>
    expect(REASONS).toHaveProperty([reason]),
  );
});

it('a refusal that nobody has words for yet still says something', () => {
  expect(explain({ code: 'something-new' }, 'mm')).toContain('something-new');
  expect(explain({ code: 'slash-stops-short', detail: { dart: 'right', mm: 12.7 } }, 'inch')).toContain(
    '1/2 in',
  );
});
