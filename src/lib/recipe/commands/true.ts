import * as v from 'valibot';
import { trueBack } from '../../pattern/true.ts';
import { changed, piecesOfSet, refused, setFor } from '../pieces.ts';
import { base, fabric, id } from '../shapes.ts';
import type { TrueWithBack } from '../types.ts';
import { kind } from './kind.ts';

/** Trues the back of a set to its fronts along a shoulder or side seam. */
export const trueWithBack = kind<TrueWithBack>({
  name: 'true',
  schema: v.strictObject({ ...base('true'), edge: id, as: v.exactOptional(fabric) }),
  apply: (work, { edge, as }) => {
    const set = setFor(work, as);
    const pieces = piecesOfSet(work, set);
    const back = pieces.find((p) => p.id === 'back' + set);
    if (back === undefined) return refused('no-such-piece', { piece: 'back' + set });
    return changed(
      work,
      back.id,
      trueBack(
        back,
        edge,
        pieces.filter((p) => p !== back),
      ),
    );
  },
});
