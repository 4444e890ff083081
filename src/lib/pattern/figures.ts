import type { Measures } from './block.ts';

/** Neutral practice figures by code, mm. Not anybody's measurements. */
export const FIGURES: Readonly<Record<'F1' | 'F2' | 'F3' | 'F4' | 'F5', Measures>> = {
  F1: { bust: 800, waist: 620, napeToWaist: 370 },
  F2: { bust: 840, waist: 660, napeToWaist: 380 },
  F3: { bust: 880, waist: 700, napeToWaist: 380 },
  F4: { bust: 960, waist: 780, napeToWaist: 390 },
  F5: { bust: 1040, waist: 860, napeToWaist: 400 },
};

export type FigureCode = keyof typeof FIGURES;

/** What the draft can be drawn for, mm. Wider than any figure above, so that an own block fits as well. */
export const MEASURE_LIMITS = {
  bust: { min: 700, max: 1300 },
  waist: { min: 480, max: 1300 },
  napeToWaist: { min: 320, max: 480 },
} as const;

/** The side seam must be long enough for a dart and for a line below it, mm. */
const SHORTEST_SIDE = 110;

/**
 * Within what a measure must lie so that the draft can be drawn with it beside the other two, mm: its own limits, a waist that is
 * not larger than the block is wide, a nape to waist that leaves a side seam. Beside a bust that is itself out of its limits, or NaN, each has
 * only its own limits.
 */
export function measureRange(
  key: keyof Measures,
  m: Measures,
): { readonly min: number; readonly max: number } {
  const { min, max } = MEASURE_LIMITS[key];
  const { bust } = MEASURE_LIMITS;
  if (!(m.bust >= bust.min && m.bust <= bust.max)) return { min, max };
  if (key === 'waist' && m.bust + 60 < max) return { min, max: m.bust + 60 };
  const shortest = m.bust / 12 + 137 + SHORTEST_SIDE;
  if (key === 'napeToWaist' && shortest > min) return { min: shortest, max };
  return { min, max };
}

/** The measures of the draft, in the order in which they are asked for and looked at. */
export const MEASURES = ['bust', 'waist', 'napeToWaist'] as const;

/**
 * The first measure the draft cannot be drawn with, or undefined when all are fine: out of its limits, not a number, or
 * out of what `measureRange` leaves it.
 */
export function unfitMeasure(m: Measures): keyof Measures | undefined {
  const within = (key: keyof Measures, { min, max }: { min: number; max: number }) =>
    m[key] >= min && m[key] <= max;
  return (
    MEASURES.find((key) => !within(key, MEASURE_LIMITS[key])) ??
    MEASURES.find((key) => !within(key, measureRange(key, m)))
  );
}
