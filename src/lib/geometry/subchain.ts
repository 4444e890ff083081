import { betweenPlaces, JOINT, placeAtLength } from './chain.ts';
import type { Chain, Place } from './types.ts';

/**
 * The part from `from` to `to`, mm along the chain (clamped to it). The ends are the chain's own points, bit for bit, at 0
 * and at full length, and equal those of pointAtLength elsewhere. Throws RangeError when nothing lies between.
 */
export function subchain(c: Chain, from: number, to: number): Chain {
  const a = placeAtLength(c, from);
  const b = placeAtLength(c, to);
  if (!(b.length - a.length > JOINT)) throw new RangeError(`no chain lies between ${from} mm and ${to} mm`);
  return betweenPlaces(c, a, b);
}

/** Cuts `mm` along the chain; both parts hold the very same point. Throws RangeError at the ends. */
export function splitChain(c: Chain, mm: number): [Chain, Chain] {
  const p = placeAtLength(c, mm);
  const last = c.length - 1;
  const start: Place = { segment: 0, t: 0, length: 0, point: c[0]!.a };
  const end: Place = { segment: last, t: 1, length: Infinity, point: c[last]!.d };
  if (p.segment === 0 && p.t === 0) throw new RangeError('cannot cut a chain at its start');
  if (p.segment === last && p.t === 1) throw new RangeError('cannot cut a chain at its end');
  return [betweenPlaces(c, start, p), betweenPlaces(c, p, end)];
}
