import * as v from 'valibot';
import { setAllowance } from '../../pattern/allowance.ts';
import { onPiece } from '../pieces.ts';
import { base, id, width } from '../shapes.ts';
import type { Allow } from '../types.ts';
import { kind } from './kind.ts';

/** Gives a seam group its allowance, mm. */
export const allow = kind<Allow>({
  name: 'allow',
  schema: v.strictObject({ ...base('allow'), piece: id, group: id, width }),
  apply: (work, { piece: id, group, width }) =>
    onPiece(work, id, (piece) => setAllowance(piece, group, width)),
});
