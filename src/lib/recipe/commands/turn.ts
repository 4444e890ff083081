import { turnInto } from '../../pattern/turn-into.ts';
import { turnPart } from '../../pattern/turn.ts';
import { resolveAnchor } from '../anchors.ts';
import { openWork, pieceWithDart, refused, withPieces } from '../pieces.ts';
import type { Turn } from '../types.ts';
import { kind } from './kind.ts';

/** Turns a part about a point and keeps the fact for whoever asks why the legs do not meet. */
export const turn = kind<Turn>({
  name: 'turn',
  keys: { dart: 'id', into: 'id?', part: 'id', about: 'anchor', by: 'turnBy' },
  apply: (work, { dart, into, part, about, by }) => {
    const piece = pieceWithDart(work, dart);
    if (piece === undefined) return refused('no-such-dart', { dart });
    const pivot = resolveAnchor(work, about, piece.id);
    if (pivot === undefined) return refused('no-such-place');
    const wish = { dart, part, pivot, by };
    const turned = into === undefined ? turnPart(piece, wish) : turnInto(piece, { ...wish, into });
    if ('refused' in turned) return turned;
    const next = openWork(withPieces(work, piece.id, turned.ok.piece));
    next.turns = [...work.turns, turned.ok.fact];
    return { work: next };
  },
});
