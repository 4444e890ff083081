import * as v from 'valibot';
import { base, mm } from '../shapes.ts';
import type { Read } from '../types.ts';
import { kind } from './kind.ts';
import { withWork } from '../pieces.ts';

/** Enters a reading, radians or mm; reading again replaces. */
export const read = kind<Read>({
  name: 'read',
  schema: v.strictObject({
    ...base('read'),
    what: v.picklist(['dart-angle', 'leg-length', 'intake']),
    value: mm,
  }),
  apply: (work, { what, value }) => ({
    work: withWork(work, { readings: { ...work.readings, [what]: value } }),
  }),
});
