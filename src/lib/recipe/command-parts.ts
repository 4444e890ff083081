/**
 * A point that follows the body. `on`: on an edge or drawn line at a fraction of its arc length. `landmark`: at a landmark,
 * moved by dx, dy in mm. `inside`: mean value weights over the outline landmarks of a piece (`anchorPolygon`).
 */
export type Anchor =
  | { readonly on: string; readonly at: number }
  | { readonly landmark: string; readonly dx?: number; readonly dy?: number }
  | { readonly inside: string; readonly weights: readonly number[] };

export type Fabric = 'knit' | 'woven';

/**
 * What to turn by: closing a dart is stored as the wish, a typed angle (radians, positive clockwise on screen) as that angle, a share
 * (0 to 1) as that share of the angle that the dart has when it is turned.
 */
export type TurnBy =
  { readonly until: 'legs-meet' } | { readonly angle: number } | { readonly share: number };

/** What every command has. */
export interface Base<Do extends string> {
  readonly do: Do;
  /** Id of the lesson step in which it was given. */
  readonly step?: string;
}
