/** The package ships no types; this is the part of it that the outside checks use. */
declare module 'kld-intersections' {
  export class Point2D {
    constructor(x: number, y: number);
    readonly x: number;
    readonly y: number;
  }

  /** A shape handed to `Intersection.intersect`; made only by the functions of `ShapeInfo`. */
  export interface Shape {
    readonly name: string;
    readonly args: readonly unknown[];
  }

  /** Each takes numbers in order (x1, y1, x2, y2, ...), points, or pairs. */
  export const ShapeInfo: {
    line(...args: readonly number[]): Shape;
    quadraticBezier(...args: readonly number[]): Shape;
    cubicBezier(...args: readonly number[]): Shape;
    path(data: string): Shape;
    polygon(points: readonly (readonly [number, number])[]): Shape;
    polyline(points: readonly (readonly [number, number])[]): Shape;
  };

  export class Intersection {
    static intersect(a: Shape, b: Shape): Intersection;
    readonly status: string;
    readonly points: readonly Point2D[];
  }
}
