import type { Point } from './types.ts';

/** Points no farther apart than this are the same contact (mm): well above rounding, far below a thread. */
export const CONTACT = 1e-9;

/** A touch spreads along both curves: contacts within this of each other are one touch (mm). */
export const NEAR = 1e-3;

/** Where two segments meet: parameter `t` on the first, `u` on the second. */
export interface Meeting {
  readonly t: number;
  readonly u: number;
  readonly point: Point;
  /** The tangents are parallel here: a touch, or a crossing at angle zero. */
  readonly tangent?: boolean | undefined;
  /** An end of a stretch where both run on the same curve. */
  readonly overlap?: boolean | undefined;
}

/** A meeting, all its fields in one order: engines are slow where records of one meaning are of many kinds. */
export const meeting = (t: number, u: number, point: Point, tangent?: true, overlap?: true): Meeting => ({
  t,
  u,
  point,
  tangent,
  overlap,
});
