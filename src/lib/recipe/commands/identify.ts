import { withEntry } from '../../pattern/with.ts';
import { resolveAnchor } from '../anchors.ts';
import { refused } from '../pieces.ts';
import type { Identify } from '../types.ts';
import { kind } from './kind.ts';
import { withWork } from '../pieces.ts';

/** Points at something on the block; pointing again replaces. */
export const identify = kind<Identify>({
  name: 'identify',
  keys: { what: 'id', at: 'anchor' },
  apply: (work, { what, at }) => {
    const point = resolveAnchor(work, at);
    if (point === undefined) return refused('no-such-place');
    return { work: withWork(work, { identified: withEntry(work.identified, what, point) }) };
  },
});
