import type { Measures } from './types.ts';

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
 * The first measure the draft cannot be drawn with, or undefined when all are fine: out of its limits, not a number, a
 * waist larger than the block is wide, or a nape to waist that leaves no side seam.
 */
export function unfitMeasure(m: Measures): keyof Measures | undefined {
  for (const key of ['bust', 'waist', 'napeToWaist'] as const) {
    const { min, max } = MEASURE_LIMITS[key];
    if (!(m[key] >= min && m[key] <= max)) return key;
  }
  if (m.waist > m.bust + 60) return 'waist';
  if (m.napeToWaist - (m.bust / 12 + 137) < SHORTEST_SIDE) return 'napeToWaist';
  return undefined;
}
