import type { BlockForm } from '../../pattern/types.ts';
import type { Fabric } from '../../recipe/types.ts';

/** What kind of exercise a drill is. */
export const EXERCISES = ['slash', 'pivot', 'angle', 'split', 'join'] as const;
export type ExerciseId = (typeof EXERCISES)[number];

/** How narrow the tolerances are: `wide` twice as wide as usual, `strict` half of it. */
export const BANDS = ['wide', 'usual', 'strict'] as const;
export type Band = (typeof BANDS)[number];

/** The paper on which lengths are given: measured at half scale, or at full size. */
export type Scale = 'half' | 'full';

/**
 * A drill as it is sent: everything else follows from it. No measurements of a person are ever in it: the body is one of the demo
 * figures, by the seed.
 */
export interface Drill {
  readonly exercise: ExerciseId;
  /** A whole number, 0 to 999 999. */
  readonly seed: number;
  readonly fabric: Fabric;
  readonly band: Band;
  /** Rungs of each hint ladder that may be seen, 0 to 3. */
  readonly hints: number;
}

/** Where a new dart is to begin: so many mm (full size) along an edge from the landmark at one of its ends. */
export interface Goal {
  /** The edge as the block calls it. */
  readonly edge: string;
  /** A plain name for the place, for the words: 'side', 'shoulder', 'neckline', 'armhole', 'centre-front', 'low-side', 'waist'. */
  readonly place: PlaceName;
  readonly from: string;
  readonly mm: number;
  /** The same as a fraction of the edge's length from that landmark, and from the start of the edge. */
  readonly fraction: number;
  readonly at: number;
}

export type PlaceName = 'side' | 'shoulder' | 'neckline' | 'armhole' | 'centre-front' | 'waist';

/** A drill worked out: the block and what is to be done with it. */
export interface Variant {
  readonly drill: Drill;
  readonly figure: string;
  readonly form: BlockForm;
  readonly scale: Scale;
  /** Darts that are moved, and where each opening goes. */
  readonly darts: readonly string[];
  readonly goals: readonly Goal[];
  /** The share of the whole angle that each opening gets. */
  readonly shares: readonly number[];
}
