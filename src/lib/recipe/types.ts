import type { Chain, Point } from '../geometry/types.ts';
import type { Piece } from '../pattern/types.ts';
import type { Block, BlockForm, Measures } from '../pattern/block.ts';
import type { Command, Fabric, Walk } from './command-types.ts';

export type * from './command-types.ts';

/** Where a connector meets its line, mm from the line's start, with its two ends, mm. `square`: at the place nearest to the tip. */
export interface ConnectorFoot {
  readonly at: number;
  readonly foot: Point;
  readonly tip: Point;
  readonly square?: boolean;
}

/** A style line or slash line as it was drawn, on the paper before anything was cut. */
export interface DrawnLine {
  readonly id: string;
  /** `slash`: a slash line; absent: a style line. */
  readonly kind?: 'slash' | undefined;
  readonly chain: Chain;
  readonly points: readonly Point[];
  /** Of a line drawn in one stroke: how many times the stroke broke its direction. */
  readonly kinks?: number | undefined;
  /** Edge ids on which the ends lie; undefined where an end does not lie on an edge. */
  readonly ends: readonly [string | undefined, string | undefined];
  /** Connectors by dart. */
  readonly feet: Readonly<Record<string, ConnectorFoot>>;
}

/** A turn as it happened, for the cause of a fault; all mm and radians. `into`: the slash that opened by it, where that was said. */
export interface TurnFact {
  readonly dart: string;
  readonly into?: string;
  readonly part: string;
  readonly pivot: Point;
  readonly angle: number;
  readonly before: number;
  readonly residual: number;
}

/** Everything on the table. Immutable: `apply` gives the next one. */
export interface Work {
  readonly block: Block;
  /** The paper before lines and cuts, what overlays are laid on: the front as opened out, or the half front of a block whose form was given. */
  readonly opened?: Piece | undefined;
  readonly pieces: readonly Piece[];
  readonly lines: readonly DrawnLine[];
  readonly turns: readonly TurnFact[];
  readonly identified: Readonly<Record<string, Point>>;
  readonly readings: Readonly<Record<string, number>>;
  readonly walked: readonly Walk[];
  readonly overlaid: readonly string[];
  /** Where pieces were moved to on the table, by piece id; the pieces' own numbers do not change. mm, radians. */
  readonly placed: Readonly<
    Record<string, { readonly dx: number; readonly dy: number; readonly angle: number }>
  >;
}

/** Why a command could not be applied; the work stays as it was. */
export interface Refusal {
  /** Stable code, e.g. 'no-such-edge', 'line-leaves-piece', 'line-crosses-itself', 'not-slashed', 'line-meets-dart'. */
  readonly code: string;
  readonly detail?: Readonly<Record<string, string | number>>;
}

export type Applied = { readonly work: Work } | { readonly refused: Refusal };

/**
 * The block that is worked on: of a demo figure, or of measures. `form` says where its bust dart lies; when it is given, the half front
 * itself is the paper to work on, without opening out.
 */
export type BlockChoice = ({ readonly figure: string } | { readonly measures: Measures }) & {
  readonly form?: BlockForm;
};

export interface Recipe {
  readonly format: 'pin-and-pivot/recipe';
  readonly version: 1;
  readonly block: BlockChoice;
  readonly fabric: Fabric;
  readonly seed: number;
  readonly commands: readonly Command[];
}

/** A recipe handed in for a lesson. */
export interface Attempt extends Recipe {
  readonly lesson: { readonly id: string; readonly content: number };
  /** What the file says of the help that was taken, by step; not in older files. Only said: no mark depends on it. */
  readonly help?: readonly StepHelp[];
}

/** Help that was taken in a step: rungs of the hint ladder that were shown, and whether its worked solution was. */
export interface StepHelp {
  readonly step: string;
  readonly hints: number;
  readonly shown: boolean;
}

/** A command that a changed earlier step left without its footing. */
export interface Unfollowed {
  readonly index: number;
  readonly command: Command;
  readonly refused: Refusal;
}

export interface Replayed {
  readonly work: Work;
  readonly unfollowed: readonly Unfollowed[];
}
