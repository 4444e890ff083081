import { withEntry } from '../../pattern/with-entry.ts';
import { resolveAnchor } from '../anchors.ts';
import { openWork, refused } from '../pieces.ts';
import type { Identify } from '../types.ts';
import { kind } from './kind.ts';

/** Points at something on the block; pointing again replaces. */
export const identify = kind<Identify>({
  name: 'identify',
  keys: { what: 'id', at: 'anchor' },
  apply: (work, { what, at }) => {
    const point = resolveAnchor(work, at);
    if (point === undefined) return refused('no-such-place');
    const next = openWork(work);
    next.identified = withEntry(work.identified, what, point);
    return { work: next };
  },
});
