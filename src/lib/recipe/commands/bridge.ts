import * as v from 'valibot';
import { bridge as bridged } from '../../pattern/bridge.ts';
import { onPiece } from '../pieces.ts';
import { base, id, mm } from '../shapes.ts';
import type { Bridge } from '../types.ts';
import { kind } from './kind.ts';

/** Bridges the opening of a dart's connector and blends. */
export const bridge = kind<Bridge>({
  name: 'bridge',
  schema: v.strictObject({ ...base('bridge'), piece: id, dart: id, before: mm, after: mm }),
  apply: (work, { piece: id, dart, before, after }) =>
    onPiece(work, id, (piece) => bridged(piece, dart, before, after)),
});
