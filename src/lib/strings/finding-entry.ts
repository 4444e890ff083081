import type { FindingState } from '../grading/types.ts';

/** A sentence, or the subject to which the numbers are added; one for all states, or one for each. */
export type Entry = string | Readonly<Partial<Record<FindingState, string>>>;

/** Entries by finding code. Words in braces are filled in from the finding. */
export type Entries = Readonly<Record<string, Entry>>;
