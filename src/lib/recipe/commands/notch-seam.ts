import { notchSeam as mark } from '../../pattern/notch-seam.ts';
import { withWork } from '../pieces.ts';
import type { NotchSeam } from '../types.ts';
import { kind } from './kind.ts';

/** Marks a notch on both edges of a seam that the front was parted along, counted from the bust point. */
export const notchSeam = kind<NotchSeam>({
  name: 'notch-seam',
  keys: { id: 'id', line: 'id', off: 'mm' },
  apply: (work, { id, line, off }) => {
    const marked = mark(work.pieces, line, id, off);
    return 'refused' in marked ? marked : { work: withWork(work, { pieces: marked.ok }) };
  },
});
