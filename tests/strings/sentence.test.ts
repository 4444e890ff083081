import { expect, it } from 'vitest';
import type { Command } from '../../src/lib/recipe/types.ts';
import { causesOnce, lengthsAre, sentence } from '../../src/lib/strings/sentence.ts';
import { formatLength } from '../../src/lib/strings/units.ts';
import { finding, edited, markOf } from '../grading/marks.ts';

const slip = (c: Command): Command =>
  c.do === 'turn' ? { ...c, about: { landmark: 'right/bust-point', dx: 14 }, by: { angle: -0.4 } } : c;

it('a cause that two findings of one dart name is told with the first; other findings are left as they are', () => {
  const { findings } = markOf('first-dart', edited('first-dart', slip));
  const named = findings.filter(({ cause }) => cause?.code === 'pivot-slipped');
  expect(named.map(({ code }) => code)).toEqual(['dart-closed/pivot', 'dart-closed/residual']);
  const told = causesOnce(findings);
  expect(told.filter(({ cause }) => cause?.code === 'pivot-slipped')).toEqual([named[0]]);
  expect(told.map(({ code }) => code)).toEqual(findings.map(({ code }) => code));
  const words = told.map((finding) => sentence(finding, 'mm')).join(' ');
  expect(words.match(/14 mm/g)).toHaveLength(1);
});

it('a cause of two measures of one dart is told with each: either may be read again by itself', () => {
  const halved = (c: Command): Command => (c.do === 'read' ? { ...c, value: c.value / 2 } : c);
  const mark = markOf('read-the-block', edited('read-the-block', halved));
  const told = causesOnce(mark.findings);
  for (const code of ['readings/leg-length', 'readings/intake']) {
    expect(finding(mark, code).cause).toMatchObject({ code: 'scale-mixed' });
    expect(told.find((one) => one.code === code)!.cause).toMatchObject({ code: 'scale-mixed' });
  }
});

it('what is said of the lengths of a list is what they are written in', () => {
  // 20 mm of the garment are 10 mm on half-scale paper: half of it, by the word.
  for (const [units, written, words] of [
    ['mm', '20 mm', /full size/],
    ['half mm', '10 mm', /half-scale paper/],
    ['half inch', '13/32 in', /half-scale paper/],
  ] as const) {
    expect(formatLength(20, units)).toBe(written);
    expect(lengthsAre(units)).toMatch(words);
  }
});
