import { describe, expect, it } from 'vitest';
import { pieceSet } from '../../src/lib/machines/scene.ts';
import { allow, carryNotches, corner, grain, label } from '../../src/lib/panels/forms/allow.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import { sampleAttempt } from '../recipe/sample.ts';

const PIECES = {
  knit: ['back', 'lower', 'upper'],
  woven: ['back-left@woven', 'back-right@woven', 'lower@woven', 'upper@woven'],
};

describe.each(['knit', 'woven'] as const)('the back of a %s top, once the leftover is treated', (fabric) => {
  const { work } = replay(sampleAttempt('F2', fabric, { upTo: 'leftover' }));

  it.each(Object.entries({ allow, corner, 'carry-notches': carryNotches, label, grain }))(
    'gets its forms for %s like the front',
    (_, make) => {
      const ids = make(work, fabric, 'mm').map(({ id }) => id.slice(id.indexOf('-') + 1));
      expect(ids.sort()).toEqual(PIECES[fabric]);
    },
  );

  it('lies in the set that the tools work on, once', () => {
    const ids = pieceSet(work, fabric).map(({ id }) => id);
    expect(ids.sort()).toEqual(PIECES[fabric]);
  });
});

it('gives no form before the front is cut apart', () => {
  expect(allow(startWork({ figure: 'F2' }), 'knit', 'mm')).toEqual([]);
});
