import { add, distance, norm, scale, sub } from '../geometry/point.ts';
import type { Point } from '../geometry/types.ts';

/** Where a pointer was, px, and when, ms. */
export interface Sample extends Point {
  readonly t: number;
}

/** A hand slower than this corrects, one quicker than that is on its way, px/s. */
const SLOW = 40;
const QUICK = 160;
/** By this part of the way of a hand that corrects goes what is held. */
const PART = 1 / 3;
/** The speed is taken over this time, ms, so that tremor is no speed. */
const OVER = 80;
/** What lags behind is caught up with over about so much of a quick way, px. */
const CATCHES_UP = 200;

/** By which part of a finger's way what is held goes at a speed, px/s. */
export function gainAt(speed: number): number {
  const part = Math.min(1, Math.max(0, (speed - SLOW) / (QUICK - SLOW)));
  return PART + (1 - PART) * part * part * (3 - 2 * part);
}

/**
 * Fine motion: a finger that moves slowly moves what it holds by a part of its way, so that tremor and the roll of the finger count less,
 * and a small correction needs no small movement (gain that depends on speed: Frees and Kessler, PRISM, 2005). It comes out from under the
 * finger by that; a quick way catches up. A mouse and a pen, which hide nothing, lead straight: what a pen holds stays at its tip.
 */
export class Fine {
  readonly #leads: boolean;
  readonly #recent: Sample[];
  #at: Point;

  /** `pointer`: as in `PointerEvent.pointerType`. */
  constructor(pointer: string, first: Sample) {
    this.#leads = pointer !== 'touch';
    this.#recent = [first];
    this.#at = first;
  }

  /** Where what is held is led to, px, now that the hand has come to a place. */
  go(now: Sample): Point {
    const recent = this.#recent;
    const last = recent.at(-1)!;
    while (recent.length > 1 && recent[0]!.t < now.t - OVER) recent.shift();
    const since = recent[0]!;
    recent.push(now);
    if (this.#leads) return (this.#at = now);
    // A hand that rested sends nothing: it has begun to move only now.
    const ms = Math.min(OVER, now.t - since.t);
    const gain = ms > 0 ? gainAt((1000 * distance(since, now)) / ms) : 1;
    const way = sub(now, last);
    const caught = gain < 1 ? 0 : Math.min(1, norm(way) / CATCHES_UP);
    this.#at = add(this.#at, add(scale(way, gain), scale(sub(last, this.#at), caught)));
    return this.#at;
  }
}
