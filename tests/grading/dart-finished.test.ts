import { expect, it } from 'vitest';
import { distance } from '../../src/lib/geometry/point.ts';
import { dartFinished } from '../../src/lib/grading/checks/dart-finished.ts';
import { sewnDart } from '../../src/lib/pattern/back-off.ts';
import { tableOf } from '../machines/finish-tables.ts';
import { contextOf, edited } from './marks.ts';

it('a cap folded the other way is shown at the cap, in the middle of the mouth, and not at the sewn point', () => {
  const off = { do: 'back-off', dart: 'right/waist-dart', by: 16 } as const;
  const after = tableOf([off, { do: 'cap', dart: 'right/waist-dart', fold: 'side' }]);
  const spec = {
    check: 'dart-finished',
    numbers: { least: 10, most: 20 },
    names: { darts: ['right/waist-dart'], fold: ['centre'] },
    tolerances: {},
  };
  const found = dartFinished(
    { ...contextOf('working-darts', edited('working-darts')), before: after, after },
    spec,
  );
  const [cap] = found.filter(({ code }) => code === 'dart-finished/cap');
  expect(cap).toMatchObject({ state: 'wrong', where: { kind: 'point' } });
  const { point, ends } = sewnDart(after.pieces[0]!, 'right/waist-dart')!;
  const shown = (cap!.where as { at: { x: number; y: number } }).at;
  // The fold lies over the middle of the dart, so its top is as far from either leg's end (common practice).
  expect(distance(shown, point)).toBeGreaterThan(distance(ends[0], point) * 0.9);
  expect(distance(shown, ends[0])).toBeCloseTo(distance(shown, ends[1]), 6);
});
