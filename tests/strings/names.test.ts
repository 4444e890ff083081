import { expect, it } from 'vitest';
import { partNames } from '../../src/lib/strings/names.ts';

it('the parts that were turned are named without a bare id', () => {
  expect(partNames('freed-right/waist-dart, freed-slash')).toBe(
    'part freed at the right waist dart, the freed part',
  );
  expect(partNames('freed-left')).toBe('part freed at the left side dart');
  expect(partNames('freed-slash-2, front')).toBe('freed part, the main part');
});
