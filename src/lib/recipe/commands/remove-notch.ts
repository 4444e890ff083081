import { removeNotch as rubOut } from '../../pattern/line-notches.ts';
import { uncutFront } from '../lines.ts';
import { changed } from '../pieces.ts';
import type { RemoveNotch } from '../types.ts';
import { kind } from './kind.ts';

/** Rubs a notch out, as long as nothing is cut. */
export const removeNotch = kind<RemoveNotch>({
  name: 'remove-notch',
  keys: { id: 'id' },
  apply: (work, command) => {
    const paper = uncutFront(work);
    return 'refused' in paper ? paper : changed(work, 'front', rubOut(paper.front, command.id));
  },
});
