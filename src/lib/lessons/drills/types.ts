import type { Fold, FullnessKind } from '../../pattern/types.ts';
import type { BlockForm } from '../../pattern/block.ts';
import type { Fabric } from '../../recipe/types.ts';
import type { DrillStepId } from './steps.ts';

/** The kinds that links of the first version know. Never add one here: what these links mean hangs on the list. */
export const FIRST_EXERCISES = ['slash', 'pivot', 'angle', 'split', 'join'] as const;
/** What kind of exercise a drill is. */
export const EXERCISES = [
  ...FIRST_EXERCISES,
  'finish',
  'fullness',
  'parallel',
  'several',
  'princess',
  'line',
  'block',
  'ready',
] as const;
export type ExerciseId = (typeof EXERCISES)[number];

/** The kinds that the practice room offers to choose from. Pieces that are made ready begin on a table that has been worked on already: they come by link, by what is due, and as a second chance. */
export const ROOM_KINDS: readonly ExerciseId[] = /* @__PURE__ */ EXERCISES.filter((kind) => kind !== 'ready');

/** The kinds that are drawn anew, from more than at first: their second draw. Never take one away: links hang on it. */
export const SECOND_DRAW: readonly ExerciseId[] = ['join'];

/** How narrow the tolerances are: `wide` twice as wide as usual, `strict` half of it. */
export const BANDS = ['wide', 'usual', 'strict'] as const;
export type Band = (typeof BANDS)[number];

/** The paper on which lengths are given: measured at half scale, or at full size. */
export const SCALES = ['half', 'full'] as const;
export type Scale = (typeof SCALES)[number];

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
  /** The paper on which lengths are given; left out: the seed says. */
  readonly scale?: Scale;
  /** By which draw of its kind the rest follows from the seed; left out: the first. */
  readonly draw?: 2;
  /** The only step that is worked, by its number among the steps of the kind, from 1: all before it is given. Left out: all of them. By the last draw. */
  readonly step?: number;
}

/** The drill as it is made today: by the last draw of its kind. */
export const newest = (drill: Drill): Drill =>
  SECOND_DRAW.includes(drill.exercise) ? { ...drill, draw: 2 } : drill;

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

export type PlaceName = 'side' | 'low-side' | 'shoulder' | 'neckline' | 'armhole' | 'centre-front' | 'waist';

/** How a dart is to be sewn: so many mm from the bust point, and the way it is pressed. */
export interface Sewn {
  readonly off: number;
  readonly fold: Fold;
}

/** What an opening is to become: the new edge reaches so many mm over the old one on either side. */
export interface Filled {
  readonly as: FullnessKind;
  readonly reach: number;
  /** How many tucks; 0 for gathers and ease. */
  readonly tucks: number;
  /** The most that the cloth eases in, mm; none for gathers and tucks. */
  readonly limit?: number;
}

/** Several lines from one edge, evenly so many mm of edge apart, their middle at the goal. mm. */
export interface Row {
  readonly count: number;
  readonly spacing: number;
  /** Parallel, over alternate pivots that far from the bust point; left out: straight to it. */
  readonly radius?: number;
  /** How far the first dart is backed off, and how much further each next one. */
  readonly off: number;
  readonly step: number;
}

/** A style line from the first goal to an end on another edge, past the bust point on the side of centre front, so many mm from it. */
export interface Near {
  readonly end: Goal;
  readonly least: number;
  readonly most: number;
}

/** A style line over the whole front, from the first goal past both bust points to the left side seam below its dart. */
export interface Across {
  /** Where it ends, as on the right half: the mirror image of this place. */
  readonly end: Goal;
  /** How far from either bust point it passes, mm. */
  readonly pass: number;
}

/** The widths of allowance that are asked for, mm. */
export interface Widths {
  /** Of the seams that are sewn to a partner: style line, shoulders, sides. */
  readonly seam: number;
  /** Of neckline and armholes; 0: they are bound. */
  readonly curve: number;
  readonly hem: number;
}

/** A drill worked out: the block and what is to be done with it. */
export interface Variant {
  readonly drill: Drill;
  readonly figure: string;
  readonly form: BlockForm;
  readonly scale: Scale;
  /** Darts that are moved (or finished where they are), and where each opening goes. */
  readonly darts: readonly string[];
  readonly goals: readonly Goal[];
  /** The share of the whole angle that each opening gets. */
  readonly shares: readonly number[];
  readonly sewn?: Sewn;
  readonly filled?: Filled;
  readonly row?: Row;
  readonly line?: Near;
  /** What is to be pointed out on the block, in this order: landmarks and edges, as the check `landmarks-found` calls them. */
  readonly toFind?: readonly string[];
  /** Steps that are done when it begins, in every drill of the kind. */
  readonly before?: readonly DrillStepId[];
  readonly across?: Across;
  readonly widths?: Widths;
  /** The seam is smoothed that many mm above and below the bust point. */
  readonly smooth?: number;
}
