import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { withPiece } from '../../src/lib/pattern/with.ts';
import { withAllowances, withCorners, withoutSeam } from '../../src/lib/pattern/with-allowances.ts';

/** A piece that has every field; the compiler says when one is missing here. */
const full: Required<Piece> = {
  id: 'upper',
  parts: [],
  hinges: [],
  darts: [],
  notches: [],
  seam: [],
  treatments: [],
  finished: [],
  fullness: [],
  smoothed: [],
  allowances: { waist: 10 },
  corners: [],
  notchesCarried: true,
  label: { name: 'Upper front', cut: 1, rightSideUp: true },
  grainline: { from: { x: 0, y: 0 }, to: { x: 0, y: 150 } },
};

describe('changed copies of a piece', () => {
  const corners = [{ before: 'waist', after: 'right/side', form: 'mitre' }] as const;

  it.each([
    ['withPiece', withPiece(full, { id: 'lower' }), { ...full, id: 'lower' }],
    ['withAllowances', withAllowances(full, { waist: 20 }), { ...full, allowances: { waist: 20 } }],
    ['withCorners', withCorners(full, corners), { ...full, corners }],
    ['withoutSeam', withoutSeam(full), { ...full, seam: undefined }],
  ])('%s loses no field and changes no other', (_, changed, expected) => {
    expect(changed).toEqual(expected);
  });

  it('have their fields in one order, so that engines see one kind of record', () => {
    const order = Object.keys(withPiece(full, {}));
    for (const changed of [withAllowances(full, {}), withCorners(full, []), withoutSeam(full)])
      expect(Object.keys(changed)).toEqual(order);
  });
});
