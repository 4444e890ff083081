import { addFullness as add } from '../../pattern/fullness.ts';
import { onDart } from '../pieces.ts';
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
  apply: (work, { dart, ...wish }) => onDart(work, dart, (piece) => add(piece, { dart, ...wish })),
});
