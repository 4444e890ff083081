import { addFullness as add } from '../../pattern/fullness.ts';
import { backWithGatherNotches } from '../../pattern/gather-partner.ts';
import { onDart, pieceWithDart, withPieces } from '../pieces.ts';
import type { AddFullness } from '../types.ts';
import { kind } from './kind.ts';

/** Leaves a dart's intake as gathers, ease or tucks: its opening is drawn over at the edge. */
export const addFullness = kind<AddFullness>({
  name: 'fullness',
  keys: {
    dart: 'id',
    as: ['gathers', 'ease', 'tucks'],
    before: 'mm',
    after: 'mm',
    tucks: 'count?',
  },
  apply: (work, { dart, ...wish }) => {
    const drawn = onDart(work, dart, (piece) => add(piece, { dart, ...wish }));
    if ('refused' in drawn) return drawn;
    const front = pieceWithDart(drawn.work, dart)!;
    const record = front.fullness!.find((one) => one.dart === dart)!;
    const back = backWithGatherNotches(drawn.work.pieces, front, record);
    return back === undefined ? drawn : { work: withPieces(drawn.work, back.id, back) };
  },
});
