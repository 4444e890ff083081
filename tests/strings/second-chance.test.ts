import { expect, it } from 'vitest';
import { isolating } from '../../src/lib/practice/isolate.ts';
import { FINDINGS } from '../../src/lib/strings/findings.ts';
import {
  helpWords,
  madeGoodWords,
  MISTAKES,
  mistakeWords,
  SECOND_CHANCE,
} from '../../src/lib/strings/second-chance.ts';

const codes = Object.keys(FINDINGS).filter((code) => !code.startsWith('paper/'));

it('every mistake has a drill, and words that end a sentence', () => {
  for (const code of codes) expect(isolating(code, 'a-skill'), code).toBeDefined();
  expect(Object.keys(MISTAKES).sort()).toEqual([...codes].sort());
  for (const words of Object.values(MISTAKES)) expect(words).toMatch(/^[a-z][a-z ,-]{10,90}[a-z]$/);
});

it('several are joined, the same words once', () => {
  expect(mistakeWords(['dart-moved/pivot', 'dart-closed/pivot'])).toBe(
    'the parts came apart at the bust point',
  );
  expect(mistakeWords(['dart-finished/legs', 'dart-finished/cap'])).toBe(
    'the legs of the dart were not equally long, and the cap was drawn for another fold',
  );
});

it('what happened to several things alike is said once, of all of them', () => {
  const things = ['bust-point', 'neckline', 'waist'].map((what) => `landmarks-found/${what}`);
  expect(mistakeWords(things)).toBe('the bust point, the neckline and the waist were looked for elsewhere');
  expect(mistakeWords([things[0]!, 'readings/intake', things[1]!, 'readings/dart-angle'])).toBe(
    'the bust point and the neckline were looked for elsewhere, and the intake and the angle of the dart were misread',
  );
  expect(mistakeWords([things[0]!, 'readings/intake'])).toBe(
    'the bust point was looked for elsewhere, and the intake was misread',
  );
});

it('where the mistake was made it is told that its credit is back, and what still lies there', () => {
  const { restoredHere } = SECOND_CHANCE;
  expect(restoredHere(['readings/intake'], false)).toBe(
    'Your short drill was right, so the credit is restored for what was off here: the intake was misread.',
  );
  expect(restoredHere(['readings/intake'], true)).toMatch(/still to be mended\.$/);
});

it('what can be too much as well as too little is told as both', () => {
  expect(MISTAKES['dart-finished/point']).toMatch(/farther than asked for, or not far enough/);
  for (const side of ['before', 'after'])
    expect(MISTAKES[`fullness/${side}`]).toMatch(/farther than asked for .*, or not far enough/);
  for (const check of ['dart-moved', 'dart-closed'])
    expect(MISTAKES[`${check}/opening`]).toMatch(/wider or narrower/);
});

it('what is off now is told apart from what was off in an earlier mark, and nothing twice', () => {
  const { linked } = SECOND_CHANCE;
  expect(linked(['dart-moved/pivot'], [])).toBe('The parts came apart at the bust point.');
  expect(linked(['dart-moved/pivot'], ['dart-moved/opening', 'dart-closed/pivot'])).toBe(
    'The parts came apart at the bust point. On the way the opening was wider or narrower than the dart makes it.',
  );
  expect(linked([], ['dart-moved/pivot'])).toBe('On the way the parts came apart at the bust point.');
});

it('help is told as it was taken, and what was made good as far as it was', () => {
  expect([helpWords(0, false), helpWords(1, false), helpWords(2, false)]).toEqual([
    '',
    'With 1 hint.',
    'With 2 hints.',
  ]);
  expect([helpWords(0, true), helpWords(3, true)]).toEqual([
    'After seeing it worked.',
    'With 3 hints, after seeing it worked.',
  ]);
  expect([madeGoodWords(0, 0), madeGoodWords(0, 2), madeGoodWords(1, 2), madeGoodWords(2, 2)]).toEqual([
    '',
    '',
    ', 1 of 2 made good by a second chance',
    ', made good by a second chance',
  ]);
});
