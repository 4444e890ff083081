import type { Fold, FullnessKind } from '../pattern/types.ts';
import type { Anchor, Base, TurnBy } from './command-parts.ts';

/** Step 1. `what`: 'bust-point' | 'dart-upper' | 'dart-lower' | 'centre-front' | 'neck-point'. */
export interface Identify extends Base<'identify'> {
  readonly what: string;
  readonly at: Anchor;
}
/** Step 1. A reading entered by the learner: 'dart-angle' in radians, 'leg-length' and 'intake' in mm full size. */
export interface Read extends Base<'read'> {
  readonly what: 'dart-angle' | 'leg-length' | 'intake';
  readonly value: number;
}
/** Mirror the half front across the straight edge `about` and join the halves; piece `front` becomes the complete front. */
export interface OpenOut extends Base<'open-out'> {
  readonly about: string;
}
/** Draw (or redraw) style line `line` smoothly through the points; the ends lie on edges when they snapped. */
export interface DrawLine extends Base<'draw-line'> {
  readonly line: string;
  readonly points: readonly Anchor[];
}
/**
 * Draw (or redraw) style line `line` as a curve that was fitted to a stroke of the hand: `points` are the control points of its cubics in
 * a row, 3 n + 1 of them. `kinks`: how many times the stroke broke its direction.
 */
export interface DrawCurve extends Base<'draw-curve'> {
  readonly line: string;
  readonly points: readonly Anchor[];
  readonly kinks: number;
}
export interface MarkNotch extends Base<'notch'> {
  readonly id: string;
  readonly line: string;
  /** Fraction of the line's arc length from its start. */
  readonly at: number;
}
export interface RemoveNotch extends Base<'remove-notch'> {
  readonly id: string;
}
/** Draw both legs of a dart to `to` (the bust point, or wherever the learner put it). */
export interface ExtendDart extends Base<'extend-dart'> {
  readonly dart: string;
  readonly to: Anchor;
}
/** Draw the connector from the dart's tip to the line at a fraction of the line's arc length. */
export interface Connect extends Base<'connect'> {
  readonly dart: string;
  readonly line: string;
  readonly at: number;
  /** The foot is the place of the line nearest to the tip, wherever that is: `at` says where it was when it was drawn. Left out: it is `at`. */
  readonly square?: boolean;
}
/**
 * Cut from an end of the line along it to the connector's foot and up the connector. `past` mm: 0 stops at the dart's tip,
 * negative stops short, positive goes through. Omit `from` after separating: only the connector is cut.
 */
export interface Slash extends Base<'slash'> {
  readonly dart: string;
  readonly line: string;
  readonly from?: 'start' | 'end';
  readonly past: number;
}
/**
 * Draw (or redraw, until it is cut) a slash line from an edge to the bust point, straight or over one alternate pivot. The slash is
 * called `slash`, and so is the dart that it becomes.
 */
export interface DrawSlash extends Base<'draw-slash'> {
  readonly slash: string;
  readonly from: Anchor;
  readonly via?: Anchor;
  readonly to: Anchor;
}
/** Cut along a slash line to its end, the tip of a working dart. `past` mm: 0 stops at the tip, more goes through. */
export interface CutSlash extends Base<'cut-slash'> {
  readonly slash: string;
  readonly past: number;
}
/**
 * Pin the block at `about`, trace the outline from the dart round to the mark at `from`, swing it and trace the rest: the new dart is called
 * `slash`. As `draw-slash` to the dart's tip, `cut-slash` and `turn` into it, but no paper is cut.
 */
export interface Pivot extends Base<'pivot'> {
  readonly dart: string;
  readonly slash: string;
  readonly from: Anchor;
  readonly about: Anchor;
  readonly by: TurnBy;
  readonly part: 'freed' | 'rest';
}
/**
 * Turn a part about `about`. `part` 'freed': the one the slash freed (without the centre front), 'rest': the other, or a part id. With
 * `into` the sheets between the dart and that slash turn, whatever they hang together by.
 */
export interface Turn extends Base<'turn'> {
  readonly dart: string;
  readonly into?: string;
  readonly part: string;
  readonly about: Anchor;
  readonly by: TurnBy;
}
/** Draw a dart to its sewn point, `by` mm from its tip on the middle of the dart. */
export interface BackOff extends Base<'back-off'> {
  readonly dart: string;
  readonly by: number;
}
/** Make the legs of a dart that was drawn to its sewn point alike: both as long as their mean. */
export interface TrueLegs extends Base<'true-legs'> {
  readonly dart: string;
}
/** Draw the folded cap of a dart, for the way it is pressed. */
export interface Cap extends Base<'cap'> {
  readonly dart: string;
  readonly fold: Fold;
}
/**
 * Leave a dart's intake as fullness: one smooth edge over its opening, from `before` mm ahead of it to `after` mm behind it in the
 * direction of the outline (clockwise on the screen). `tucks`: how many, for tucks only.
 */
export interface AddFullness extends Base<'fullness'> {
  readonly dart: string;
  readonly as: FullnessKind;
  readonly before: number;
  readonly after: number;
  readonly tucks?: number;
}
/** Cut a piece apart along two darts of one bust point; `front` becomes `front-centre` and `front-side`. */
export interface PartAtDarts extends Base<'part-at-darts'> {
  readonly darts: readonly [string, string];
}
/** Smooth the corner that a seam makes at a landmark, from `reach` mm before it to `reach` mm after it. */
export interface SmoothSeam extends Base<'smooth-seam'> {
  readonly piece: string;
  readonly at: string;
  readonly reach: number;
}
/**
 * Mark a notch on both edges of a seam that the front was parted along: `off` mm from the bust point towards the edge that the seam begins at,
 * or with a minus towards the one it ends at. Marking it again moves it.
 */
export interface NotchSeam extends Base<'notch-seam'> {
  readonly id: string;
  readonly line: string;
  readonly off: number;
}
