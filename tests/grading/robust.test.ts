import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gradeLesson } from '../../src/lib/grading/grade.ts';
import { overlay } from '../../src/lib/pattern/overlay.ts';
import { replayDocument } from '../../src/lib/recipe/document.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import type { Attempt } from '../../src/lib/recipe/types.ts';
import { sentence } from '../../src/lib/strings/sentence.ts';
import { lineCalled, ODD, oddAttempts } from '../recipe/odd.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { lesson } from './marks.ts';

function marked(attempt: Attempt): void {
  const findings = gradeLesson(lesson, attempt).flatMap((mark) => mark.findings);
  expect(findings.map((finding) => sentence(finding, 'mm')).join('\n')).not.toMatch(/undefined|NaN|[{}]/);
  // What is written to a file has to come back: no Infinity, no NaN.
  expect(JSON.parse(JSON.stringify(findings))).toEqual(findings);
  const strange: unknown[] = [];
  JSON.stringify(replayDocument(attempt), (key, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) strange.push([key, value]);
    return value;
  });
  expect(strange).toEqual([]);
}

describe('is replayed and marked without throwing, and words are found for it', () => {
  it.each(Object.keys(ODD))('%s', (name) => marked(ODD[name]!));

  it('any attempt that can be read, however odd', () => {
    fc.assert(fc.property(oddAttempts, marked), { numRuns: 150 });
  }, 60_000);
});

it('a line may be called what it likes: every edge still knows which stretch of it it is', () => {
  for (const line of ['my/a.x', 'a/b', 'x/1/b', 'b']) {
    const commands = sampleAttempt('F2', 'woven', { upTo: 'separate' }).commands;
    const named = commands.map((c) => ('line' in c ? { ...c, line } : c));
    const { work, unfollowed } = replay({ ...ODD['feet crossed']!, commands: named });
    expect(unfollowed).toEqual([]);
    for (const fit of work.pieces.slice(0, 2).flatMap((p) => overlay(p, work.opened!, work.lines)))
      expect(fit.residual).toBeLessThan(1e-6);
  }
});

it('a line may not be called what the cuts to come are called', () => {
  for (const line of ['connector-right', 'taped-left', 'bridge-right', 'freed-right', 'gap/right/1'])
    expect(replay(lineCalled(line)).unfollowed[0]!.refused.code).toBe('name-taken');
});
