import { expect, it } from 'vitest';
import { nameOf, partNames, theDart } from '../../src/lib/strings/names.ts';
import { pinnedName } from '../../src/lib/strings/paper.ts';

it('the parts that were turned are named without a bare id', () => {
  expect(partNames('freed-right/waist-dart, freed-slash')).toBe(
    'part freed at the right waist dart and the part freed at the slash',
  );
  expect(partNames('freed-left')).toBe('part freed at the left side dart');
  expect(partNames('freed-slash-2, front')).toBe('part freed at slash 2 and the main part');
  expect(partNames('freed-slash')).toBe('freed part');
  expect(partNames('front, freed-slash-1, freed-slash-2')).toBe(
    'main part, the part freed at slash 1 and the part freed at slash 2',
  );
});

it('a dart made with the pin is not called a slash', () => {
  expect(['new', 'new-1'].map(theDart)).toEqual(['the new dart', 'new dart 1']);
  expect(nameOf('new/a')).toBe('new dart, leg a');
  expect(partNames('freed-new')).toBe('freed part');
  // What an older file calls it.
  expect(['slash', 'slash-2', 'neck', 'slashed'].map(pinnedName)).toEqual([
    'new',
    'new-2',
    'neck',
    'slashed',
  ]);
});
