import type { Outcome } from '../pattern/outcome.ts';
import type { Piece } from '../pattern/types.ts';
import type { DrawnLine, Work } from './types.ts';

/**
 * How connectors are drawn again when a dart's tip or the line moves. Set by what draws connectors: most lessons do without, and need
 * not fetch it; who has none drawn needs neither.
 */
export const connectors: {
  /** Draws a dart's connector to a line at a fraction of its length, or to its nearest place. */
  at?: (work: Work, dart: string, line: string, fraction: number, square?: boolean) => Outcome<Work>;
  /** Draws it from the dart's new tip; `was`: the front before. */
  again?: (work: Work, was: Piece, dart: string, line: DrawnLine) => Work;
} = {};
