import { baseId, piecesOf } from '../../pattern/copy.ts';
import { backFor } from '../../pattern/seam.ts';
import { trueBack } from '../../pattern/true.ts';
import type { Side } from '../../pattern/types.ts';
import { refused, withPieces } from '../pieces.ts';
import type { TrueWithBack } from '../types.ts';
import { kind } from './kind.ts';

/**
 * Trues the back of a set to its fronts along a shoulder or side seam. The half that was trued becomes a piece of its own;
 * the back as drafted stays for the other half until that is trued too.
 */
export const trueWithBack = kind<TrueWithBack>({
  name: 'true',
  keys: { edge: 'id', as: 'fabric?' },
  apply: (work, { edge, as }) => {
    const set = piecesOf(work.pieces, as);
    const slash = edge.indexOf('/');
    const back = backFor(set, (slash < 0 ? edge : edge.slice(0, slash)) as Side);
    if (back === undefined) return refused('no-such-piece', { piece: 'back' });
    const trued = trueBack(back, edge, set);
    if ('refused' in trued) return trued;
    const isNew = trued.ok.id !== back.id;
    const keep = isNew && !set.some((p) => baseId(p.id).startsWith('back-'));
    const next = keep ? [back, trued.ok] : [trued.ok];
    return { work: withPieces(work, back.id, ...next) };
  },
});
