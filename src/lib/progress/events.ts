import type { Verdict } from '../grading/types.ts';

/** What was worked on: a lesson, or a drill by the id that makes it again (exercise and seed). */
export interface Exercise {
  readonly kind: 'lesson' | 'drill';
  readonly id: string;
  /** Content version at that time. */
  readonly content: number;
}

interface Base {
  /** Unique for ever and on every device: the caller makes it with crypto.randomUUID. */
  readonly id: string;
  /** Milliseconds since 1970, UTC. */
  readonly at: number;
  /** A name by chance of the device that it was recorded on; it says nothing of the device or of the person. */
  readonly device: string;
  readonly exercise: Exercise;
  readonly step: string;
  /** What was practised (`practice/skills.ts`). */
  readonly skill: string;
}

/** An attempt at a step that was marked. */
export interface MarkEvent extends Base {
  readonly kind: 'mark';
  readonly verdict: Verdict;
  /**
   * Codes of what was wrong or missing, each once, in order of the alphabet. Where anything is missing the verdict is `notReady`, so those of a
   * mark that needs work are all of something wrong, in old marks too: no key of its own has to tell them apart.
   */
  readonly codes: readonly string[];
  /** The largest error in the mark, in tolerances: 1 is just allowed. null where nothing had a tolerance. */
  readonly error: number | null;
  /** Rungs of the hint ladder that were open. */
  readonly hints: number;
  /** The worked solution of the step was seen. */
  readonly worked: boolean;
  /** Time at work on the step since its last mark, s. */
  readonly seconds: number;
  /** How hard the drill was, in the units of `practice/boundary.ts`; none for a lesson. */
  readonly level: number | null;
}

/** The worked solution of a step was opened. Kept on its own, so that a reload does not hide it. */
export interface WorkedEvent extends Base {
  readonly kind: 'worked';
}

/** A rung of the hint ladder was opened. Kept on its own, so that it is known where the step is left without another mark. */
export interface HintEvent extends Base {
  readonly kind: 'hint';
  /** Rungs that are open by now. */
  readonly hints: number;
}

/** A second chance was taken and done right: the credit for an earlier mistake is restored. */
export interface CreditEvent extends Base {
  readonly kind: 'credit';
  /** Id of the mark with the mistake. */
  readonly of: string;
  /** Code of the mistake that is made good. */
  readonly code: string;
}

/** One thing that happened. Nothing in it is a measure of a body, and there is no room for one. */
export type ProgressEvent = MarkEvent | WorkedEvent | HintEvent | CreditEvent;

/** All that happened, in order of time and with every id once: what `mergeLogs` gives. */
export type Log = readonly ProgressEvent[];
