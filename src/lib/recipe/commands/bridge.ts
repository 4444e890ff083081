import * as v from 'valibot';
import { bridge as bridged } from '../../pattern/bridge.ts';
import { changed, pieceById, refused } from '../pieces.ts';
import { base, id, mm } from '../shapes.ts';
import type { Bridge } from '../types.ts';
import { kind } from './kind.ts';

/** Bridges the opening of a dart's connector and blends. */
export const bridge = kind<Bridge>({
  name: 'bridge',
  schema: v.strictObject({ ...base('bridge'), piece: id, dart: id, before: mm, after: mm }),
  apply: (work, { piece: pieceId, dart, before, after }) => {
    const piece = pieceById(work, pieceId);
    if (piece === undefined) return refused('no-such-piece', { piece: pieceId });
    return changed(work, pieceId, bridged(piece, dart, before, after));
  },
});
