import { seamOf } from '../../pattern/seam.ts';
import { openWork, refused } from '../pieces.ts';
import type { Walk } from '../types.ts';
import { kind } from './kind.ts';

/** Walks a seam and notes what the learner concluded; walking the same line of it again replaces. */
export const walk = kind<Walk>({
  name: 'walk',
  keys: { seam: 'id', along: ['seam', 'cut'], says: ['match', 'eased', 'differs'], as: 'fabric?' },
  apply: (work, command) => {
    if (seamOf(work.pieces, command.seam, command.as) === undefined)
      return refused('no-such-seam', { seam: command.seam });
    const walked = work.walked.filter((w) => w.seam !== command.seam || w.as !== command.as);
    walked.push(command);
    const next = openWork(work);
    next.walked = walked;
    return { work: next };
  },
});
