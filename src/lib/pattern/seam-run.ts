import { reverseChain } from '../geometry/chain-moved.ts';
import type { Chain } from '../geometry/types.ts';

/** A notch, or the joint of two intervals of a line; mm along the run. */
export interface SeamMark {
  readonly id: string;
  readonly at: number;
}

/**
 * One side of a seam as it will be sewn. A style line runs as it was drawn, a shoulder from the neck, a side from the underarm.
 * Marks are in order of `at`; ghosts are left out. All mm.
 */
export interface SeamMarks {
  readonly notches: readonly SeamMark[];
  /** Ends of the line's intervals, as long as nothing was taken out of this piece. */
  readonly joints: readonly SeamMark[];
  /** Openings and bridges. */
  readonly openings: readonly { readonly dart: string; readonly from: number; readonly to: number }[];
  readonly length: number;
  /** What this side is longer by on purpose, and where: between two notches, or over the whole run ('start' to 'end'). */
  readonly eased?: { readonly from: string; readonly to: string; readonly amount: number } | undefined;
  /** Where it is gathered, eased or tucked over a dart's opening, and by how much the cut edge is longer there than sewn. */
  readonly fulled?: readonly Fulled[] | undefined;
}

export interface Fulled {
  readonly from: number;
  readonly to: number;
  readonly amount: number;
}

/** The run with its course. */
export interface SeamRun extends SeamMarks {
  /** In the direction of the seam; an open connector is spanned straight. */
  readonly chains: readonly Chain[];
  readonly pieces: readonly string[];
}

export interface Seam {
  readonly a: SeamRun;
  readonly b: SeamRun;
}

/** A run that draws its course when that is first asked for: most who walk a seam want its marks only. */
export class LazyRun implements SeamRun {
  readonly notches: SeamMarks['notches'];
  readonly joints: SeamMarks['joints'];
  readonly openings: SeamMarks['openings'];
  readonly length: number;
  readonly eased: SeamMarks['eased'];
  readonly fulled: SeamMarks['fulled'];
  readonly pieces: readonly string[];
  private readonly draw: () => readonly Chain[];
  private drawn: readonly Chain[] | undefined = undefined;

  constructor(marks: SeamMarks, pieces: readonly string[], draw: () => readonly Chain[]) {
    this.notches = marks.notches;
    this.joints = marks.joints;
    this.openings = marks.openings;
    this.length = marks.length;
    this.eased = marks.eased;
    this.fulled = marks.fulled;
    this.pieces = pieces;
    this.draw = draw;
  }

  get chains(): readonly Chain[] {
    return (this.drawn ??= this.draw());
  }
}

/** The chain in the direction of the seam. */
export const forward = (chain: Chain, reversed: boolean): Chain => (reversed ? reverseChain(chain) : chain);

/** Marks in the order of the seam. */
export const byPlace = (m: SeamMark, k: SeamMark): number => m.at - k.at;
