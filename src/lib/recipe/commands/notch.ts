import { markNotch } from '../../pattern/line-notches.ts';
import { lineNotches } from '../late-notches.ts';
import { lineLength, uncutFront } from '../lines.ts';
import { changed, refused } from '../pieces.ts';
import type { MarkNotch } from '../types.ts';
import { kind } from './kind.ts';

lineNotches.mark = markNotch;

/** Marks a notch across the line before anything is cut, or moves the one with that id. */
export const notch = kind<MarkNotch>({
  name: 'notch',
  keys: { id: 'id', line: 'id', at: 'fraction' },
  apply: (work, { id, line, at }) => {
    const paper = uncutFront(work);
    if ('refused' in paper) return paper;
    const length = lineLength(paper.front, line);
    if (length === undefined) return refused('no-such-line', { line });
    return changed(work, 'front', markNotch(paper.front, line, { id, at: at * length }));
  },
});
