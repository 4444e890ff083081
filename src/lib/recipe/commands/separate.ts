import { separate as cutApart } from '../../pattern/separate.ts';
import { frontOf, refused, withPieces } from '../pieces.ts';
import type { Separate } from '../types.ts';
import { kind } from './kind.ts';

/** Cuts the rest of the line: the front becomes `upper` and `lower`. */
export const separate = kind<Separate>({
  name: 'separate',
  keys: { line: 'id' },
  apply: (work, { line }) => {
    const front = frontOf(work);
    if (front === undefined) return refused('already-separated');
    if (!work.lines.some((l) => l.id === line)) return refused('no-such-line', { line });
    const cut = cutApart(front, line);
    return 'refused' in cut ? cut : { work: withPieces(work, 'front', ...cut.ok) };
  },
});
