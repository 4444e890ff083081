import { cutSlash as cut } from '../../pattern/cut-slash.ts';
import { withPieces } from '../pieces.ts';
import { paperFront } from '../paper.ts';
import { putOnTip } from '../slashes.ts';
import type { CutSlash } from '../types.ts';
import { kind } from './kind.ts';

/** Cuts along a slash line to the tip of a working dart; the slash is a dart from then on. */
export const cutSlash = kind<CutSlash>({
  name: 'cut-slash',
  keys: { slash: 'id', past: 'mm' },
  apply: (work, { slash, past }) => {
    const paper = paperFront(work);
    if ('refused' in paper) return paper;
    const done = cut(paper.front, slash, past);
    if ('refused' in done) return done;
    return { work: putOnTip(withPieces(work, 'front', done.ok), done.ok, slash) };
  },
});
