import { expect, it } from 'vitest';
import { partNames } from '../../src/lib/strings/names.ts';

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
