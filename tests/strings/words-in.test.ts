import { expect, it } from 'vitest';
import { wordsIn } from '../../src/lib/strings/words-in.ts';

const told = (text: string): readonly string[] =>
  wordsIn(text).map(({ at, length, term }) => `${text.slice(at, at + length)}: ${term}`);

it('finds each word where it stands first, the longer before a part of it', () => {
  expect(
    told('Close the working dart; a dart that is closed has its legs together. Darts are folded.'),
  ).toEqual(['working dart: working dart', 'dart: dart', 'legs: dart legs']);
  expect(told('Centre front, then the notches; walk them on the half-scale paper')).toEqual([
    'Centre front: centre front (CF)',
    'notches: notch',
    'walk: walking a seam',
    'half-scale: half scale',
  ]);
});

it('leaves words that only look like one', () => {
  expect(told('A slender sidewalk; an unease; the building blocked it; at an alternate pivot')).toEqual([]);
});
