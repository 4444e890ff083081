import { withEntry } from '../../pattern/with.ts';
import type { Read } from '../types.ts';
import { kind } from './kind.ts';
import { withWork } from '../pieces.ts';

/** Enters a reading, radians or mm; reading again replaces. */
export const read = kind<Read>({
  name: 'read',
  keys: { what: ['dart-angle', 'leg-length', 'intake'], value: 'mm' },
  apply: (work, { what, value }) => ({
    work: withWork(work, { readings: withEntry(work.readings, what, value) }),
  }),
});
