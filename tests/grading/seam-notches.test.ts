import { describe, expect, it } from 'vitest';
import { seamNotches } from '../../src/lib/grading/checks/seam-notches.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import type { Work } from '../../src/lib/recipe/types.ts';
import { FINISH_TABLES } from '../machines/finish-tables.ts';

const spec = {
  check: 'seam-notches',
  tolerances: {
    bust: { value: 1.6, reason: 'pencil-line' },
    place: { value: 1.6, reason: 'notch-place' },
  },
  numbers: { least: 30, most: 70 },
  names: { piece: 'front-side', line: 'princess' },
};
const before = FINISH_TABLES['notch-seam']!;
const marked = (...offs: number[]): Work =>
  offs.reduce((work, off, i) => {
    const next = apply(work, { do: 'notch-seam', id: `n${i + 1}`, line: 'princess', off });
    if ('refused' in next) throw new Error(next.refused.code);
    return next.work;
  }, before);
const judged = (after: Work) =>
  seamNotches({ before, after, fabric: 'woven', unfollowed: [], commands: [] } as never, spec).map(
    ({ code, state, measured }) => [
      code.split('/')[1],
      state,
      measured === undefined ? undefined : Math.round(measured),
    ],
  );

// That a princess seam gets a notch at the bust point and one on either side of the eased stretch is common practice; the range is ours.
describe('notches of a princess seam', () => {
  it('one at the bust point, one above, one below', () => {
    expect(judged(marked(0, 45, -45))).toEqual([
      ['bust', 'right', 0],
      ['beside', 'right', 45],
      ['beside', 'right', 45],
    ]);
  });
  it('the order and further notches do not matter; the best of several counts', () => {
    expect(judged(marked(-100, 20, -33, 68, 0.4)).map(([, state]) => state)).toEqual([
      'right',
      'right',
      'right',
    ]);
  });
  it('says which is missing, and by how much one is off', () => {
    expect(judged(before).map(([, state]) => state)).toEqual(['missing', 'missing', 'missing']);
    expect(judged(marked(9, -90))).toEqual([
      ['bust', 'wrong', 9],
      ['beside', 'wrong', 9],
      ['beside', 'wrong', 90],
    ]);
  });
  it('is not ready while the front is one piece', () => {
    expect(judged(FINISH_TABLES['part-at-darts']!)).toEqual([['parted', 'missing', undefined]]);
  });
});
