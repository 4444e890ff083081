import type { Isometry, Point } from './types.ts';
import { rotationAbout } from './isometry.ts';

/** What best lays one set of points on another. */
export interface Registration {
  /** Rigid, never a mirror image. */
  readonly motion: Isometry;
  /** Root mean square distance left, mm. */
  readonly residual: number;
  /** Whether a mirror image would fit better. */
  readonly mirrored: boolean;
}

/**
 * Closed-form rigid least squares (Procrustes in the plane): after both centroids are laid on each other, the turn is the
 * direction of (Σ u·v, Σ u×v), which needs only normalising. Points correspond by index; throws RangeError when the
 * counts differ or are zero.
 */
export function register(from: readonly Point[], to: readonly Point[]): Registration {
  const n = from.length;
  if (n === 0 || n !== to.length)
    throw new RangeError('registration needs the same number of points, one or more');
  let fx = 0;
  let fy = 0;
  let gx = 0;
  let gy = 0;
  for (let i = 0; i < n; i++) {
    fx += from[i]!.x;
    fy += from[i]!.y;
    gx += to[i]!.x;
    gy += to[i]!.y;
  }
  fx /= n;
  fy /= n;
  gx /= n;
  gy /= n;
  let along = 0;
  let across = 0;
  let mirrorAlong = 0;
  let mirrorAcross = 0;
  let size = 0;
  for (let i = 0; i < n; i++) {
    const ux = from[i]!.x - fx;
    const uy = from[i]!.y - fy;
    const vx = to[i]!.x - gx;
    const vy = to[i]!.y - gy;
    along += ux * vx + uy * vy;
    across += ux * vy - uy * vx;
    mirrorAlong += ux * vx - uy * vy;
    mirrorAcross += ux * vy + uy * vx;
    size += ux * ux + uy * uy + vx * vx + vy * vy;
  }
  const fit = Math.sqrt(along * along + across * across);
  const mirrorFit = Math.sqrt(mirrorAlong * mirrorAlong + mirrorAcross * mirrorAcross);
  // All points in one place, or a half-half tie: every turn fits alike, so do not turn.
  const turns = fit > 1e-15 * size;
  const c = turns ? along / fit : 1;
  const s = turns ? across / fit : 0;
  const turn = rotationAbout({ x: fx, y: fy }, c, s);
  const motion = {
    a: turn.a,
    b: turn.b,
    c: turn.c,
    d: turn.d,
    e: turn.e + (gx - fx),
    f: turn.f + (gy - fy),
  };
  // Summed from the differences, not from size − 2·fit, which would cancel to 1e-8.
  let left = 0;
  for (let i = 0; i < n; i++) {
    const x = motion.a * from[i]!.x + motion.c * from[i]!.y + motion.e - to[i]!.x;
    const y = motion.b * from[i]!.x + motion.d * from[i]!.y + motion.f - to[i]!.y;
    left += x * x + y * y;
  }
  return { motion, residual: Math.sqrt(left / n), mirrored: mirrorFit - fit > 1e-12 * size };
}
