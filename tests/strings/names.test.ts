import { expect, it } from 'vitest';
import { nextSlash } from '../../src/lib/machines/tools/slashes.ts';
import type { Work } from '../../src/lib/recipe/types.ts';
import type { Finding } from '../../src/lib/grading/types.ts';
import { describe } from '../../src/lib/strings/commands.ts';
import { dartOn, nameOf, openedId, partNames, theDart, theMadeDart } from '../../src/lib/strings/names.ts';
import { sentence } from '../../src/lib/strings/sentence.ts';

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

it('the back has its own centre', () => {
  expect(['neck-centre', 'back/neck-centre', 'back/waist-centre', 'back/shoulder'].map(nameOf)).toEqual([
    'neckline at centre front',
    'back neckline at centre back',
    'back waist at centre back',
    'back shoulder seam',
  ]);
});

it('a dart made with the pin is not called a slash', () => {
  expect(['new', 'new-1'].map(theDart)).toEqual(['the new dart', 'new dart 1']);
  expect(dartOn('slash 2', 'right/neckline')).toBe('slash 2 (right neckline)');
  expect(dartOn('the slash', undefined)).toBe('the slash');
  expect(nameOf('new/a')).toBe('new dart, leg a');
  expect(partNames('freed-new')).toBe('freed part');
  // What an older file calls it.
  expect(['slash', 'slash-2', 'neck', 'slashed'].map(openedId)).toEqual(['new', 'new-2', 'neck', 'slashed']);
});

it('what a slash opened into is finished as a dart, in commands, in marks and by name', () => {
  expect(['slash', 'slash-2', 'right', 'right/waist-dart', 'neck'].map(theMadeDart)).toEqual([
    'the new dart',
    'new dart 2',
    'the right side dart',
    'the right waist dart',
    'the neck slash',
  ]);
  expect(describe({ do: 'cap', dart: 'slash', fold: 'side' }, 'mm')).toBe(
    'Fold the new dart towards the side and cut its cap.',
  );
  expect(describe({ do: 'back-off', dart: 'slash-1', by: 25 }, 'mm')).toBe(
    'Draw new dart 1 to its sewn point, 25 mm from its tip.',
  );
  const uncapped: Finding = {
    check: 'dart-finished',
    code: 'dart-finished/cap',
    state: 'missing',
    unit: 'count',
    about: { dart: 'slash' },
  };
  expect(sentence(uncapped, 'mm')).toBe('The new dart has no cap yet.');
  expect(sentence({ ...uncapped, about: { dart: 'slash-1' } }, 'mm')).toBe('New dart 1 has no cap yet.');
});

it('a new dart gets no number that a slash on the same table has', () => {
  const dart = { id: 'slash' };
  const work = { lines: [{ id: 'slash-1' }], pieces: [{ darts: [dart] }] } as unknown as Work;
  expect([nextSlash(work), nextSlash(work, 'new')]).toEqual(['slash-2', 'new-2']);
});
