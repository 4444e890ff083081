import type { Command, CommandName, Work } from '../../src/lib/recipe/types.ts';
import { tableOf } from './finish-tables.ts';

export const WAIST = 'right/waist-dart';
export const BUST = { landmark: 'right/bust-point' } as const;

/** The half front in its waist form with the dart drawn to the bust point. */
export const WORKING: readonly Command[] = [{ do: 'extend-dart', dart: WAIST, to: BUST }];

const slash = (id: string, on: string, at: number): Command => ({
  do: 'draw-slash',
  slash: id,
  from: { on, at },
  to: BUST,
});
/** A line from the side seam, and one from the shoulder. */
export const TWO_LINES: readonly Command[] = [
  ...WORKING,
  slash('slash-1', 'right/side', 0.66),
  slash('slash-2', 'right/shoulder', 0.5),
];
export const TWO_CUTS: readonly Command[] = [
  ...TWO_LINES,
  { do: 'cut-slash', slash: 'slash-1', past: 0 },
  { do: 'cut-slash', slash: 'slash-2', past: 0 },
];

/** A table for each tool that moves darts. */
export const DART_TABLES: Readonly<Partial<Record<CommandName, Work>>> = {
  'draw-slash': tableOf(TWO_LINES),
  'cut-slash': tableOf(TWO_LINES),
  turn: tableOf(TWO_CUTS),
  pivot: tableOf(WORKING),
};
