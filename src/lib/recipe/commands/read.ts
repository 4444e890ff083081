import { withEntry } from '../../pattern/with-entry.ts';
import { openWork } from '../pieces.ts';
import type { Read } from '../types.ts';
import { kind } from './kind.ts';

/** Enters a reading, radians or mm; reading again replaces. */
export const read = kind<Read>({
  name: 'read',
  keys: { what: ['dart-angle', 'leg-length', 'intake'], value: 'mm' },
  apply: (work, { what, value }) => {
    const next = openWork(work);
    next.readings = withEntry(work.readings, what, value);
    return { work: next };
  },
});
