import type { Attempt } from '../recipe/types.ts';

/** What is kept of a lesson between visits. The mark is never kept: it is worked out again from the attempt, of the steps that were checked. */
export interface Progress {
  readonly attempt: Attempt;
  readonly step: string;
  readonly flagged: readonly string[];
  /** Rungs of the hint ladder that were shown, by step id. */
  readonly hints: Readonly<Record<string, number>>;
  readonly demonstrationSeen: boolean;
  /** Steps whose work lies as it was last checked; not in records of earlier versions. */
  readonly checked?: readonly string[];
}

/** Text of a progress record, ready to be stored. */
export function progressToText(progress: Progress): string {
  return JSON.stringify({ format: 'pin-and-pivot/progress', version: 1, ...progress });
}
