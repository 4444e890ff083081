import { openOut as mirrorOut } from '../../pattern/mirror.ts';
import { frontOf, refused, withPieces } from '../pieces.ts';
import type { OpenOut } from '../types.ts';
import { kind } from './kind.ts';
import { withWork } from '../pieces.ts';

/** Opens the half front out. Until something is drawn on the result it may be done again, about another edge. */
export const openOut = kind<OpenOut>({
  name: 'open-out',
  keys: { about: 'id' },
  apply: (work, { about }) => {
    if (work.opened !== undefined && frontOf(work) !== work.opened) return refused('already-drawn-on');
    const opened = mirrorOut(work.block.front, about);
    if ('refused' in opened) return opened;
    return { work: withWork(withPieces(work, 'front', opened.ok), { opened: opened.ok }) };
  },
});
