import type { Piece } from '../../../pattern/types.ts';
import type { BlockForm } from '../../../pattern/block.ts';
import { pick, type Chance } from '../chance.ts';
import type { Drill, Scale, Variant } from '../types.ts';

/** What every kind begins with: the block and the paper on which its lengths are measured. */
export interface Begun extends Pick<Variant, 'drill' | 'figure' | 'form' | 'scale'> {
  readonly paper: Piece;
}

/** What a kind draws its variants from. */
export interface Draw {
  readonly drill: Drill;
  readonly chance: Chance;
  /** Drawn before all else: the figure, the form, the scale. */
  readonly begun: Begun;
}

export const DARTS: Readonly<Record<BlockForm, readonly string[]>> = {
  side: ['right'],
  waist: ['right/waist-dart'],
  'two-dart': ['right', 'right/waist-dart'],
};

/** The variant without the paper it was measured on. */
export const without = ({ drill, figure, form, scale }: Begun) => ({ drill, figure, form, scale });

/** A length between the two, mm at full size, in whole mm of the paper that it is measured on. */
export function lengthBetween(chance: Chance, scale: Scale, least: number, most: number): number {
  const step = scale === 'half' ? 2 : 1;
  const steps = Math.floor((most - least) / step);
  return (
    least +
    step *
      pick(
        chance,
        Array.from({ length: steps + 1 }, (_, i) => i),
      )
  );
}
