/** A point or a vector; millimetres at full size, x to the viewer's right, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A straight segment from `a` to `d`. */
export interface Line {
  readonly kind: 'line';
  readonly a: Point;
  readonly d: Point;
}

/** A cubic Bézier segment from `a` to `d` with control points `b` and `c`. */
export interface Cubic {
  readonly kind: 'cubic';
  readonly a: Point;
  readonly b: Point;
  readonly c: Point;
  readonly d: Point;
}

export type Segment = Line | Cubic;

/** Segments end to end: each starts exactly (bit for bit) where the one before it ends. */
export type Chain = readonly Segment[];

/**
 * An isometry of the plane: x' = a·x + c·y + e, y' = b·x + d·y + f (the order of an SVG matrix).
 * Rigid motions have determinant +1, reflections −1.
 */
export interface Isometry {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** A place on a chain. `length` is arc length from the chain's start in mm, `t` the parameter on `segment`. */
export interface Place {
  readonly segment: number;
  readonly t: number;
  readonly length: number;
  readonly point: Point;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}
