import { distance } from '../geometry/point.ts';
import type { Point } from '../geometry/types.ts';
import { Fine, type Sample } from './fine.ts';

/** Where a hand was, and where it had brought what it holds, px. */
export interface Place extends Sample {
  readonly led: Point;
}

/** Lifting a finger, a pen or a button takes so long, ms (ours). */
const LIFTS = 100;
/** Farther than this in that time it was no slip but meant, px: a finger rolls as it is lifted, a pen slides. */
const SLIPS: Readonly<Record<string, number>> = { mouse: 2, pen: 5, touch: 14 };
/** A hand that went less than this far in as long a time before was at rest, px. */
const STILL = 5;
/** A press that lasts longer than this is no tap, ms: then a short way is a pull. */
const TAP = 200;
/** Less than this is no way at all, px. */
const LEAST = 2;

/** The way of a pointer from the press on: tells what of it was meant. */
export class Track {
  readonly pointer: string;
  readonly #samples: Place[];
  readonly #first: Sample;
  readonly #fine: Fine;
  #farthest = 0;

  constructor(pointer: string, first: Sample) {
    this.pointer = pointer;
    this.#first = first;
    this.#samples = [{ ...first, led: first }];
    this.#fine = new Fine(pointer, first);
  }

  add(sample: Sample): void {
    const all = this.#samples;
    all.push({ ...sample, led: this.#fine.go(sample) });
    this.#farthest = Math.max(this.#farthest, distance(sample, this.#first));
    // What lies longer back than two liftings is asked for no more.
    while (all.length > 2 && all[1]!.t < sample.t - 2 * LIFTS) all.shift();
  }

  /** Where the hand is now. */
  get last(): Place {
    return this.#samples.at(-1)!;
  }

  /** Whether a press that goes on until then is too long for a tap. */
  slow(t: number): boolean {
    return t - this.#first.t > TAP;
  }

  /** Where the hand rested before it was lifted at a time; where it came to, when it did not rest. */
  rest(t: number): Place {
    const { last } = this;
    const rested = this.#before(t - LIFTS);
    const earlier = this.#before(t - 2 * LIFTS);
    const still = distance(earlier, rested) <= STILL && distance(rested, last) <= (SLIPS[this.pointer] ?? 0);
    return still ? rested : last;
  }
  /** Whether it was lifted elsewhere than where it rested. */
  slipped(t: number): boolean {
    return this.rest(t) !== this.last;
  }
  #before(t: number): Place {
    return this.#samples.findLast((one) => one.t <= t) ?? this.#samples[0]!;
  }

  /** Whether it went nowhere, all in all: `within` px, and back to where it was pressed. */
  stayed(t: number, within: number): boolean {
    return this.#farthest <= within && distance(this.rest(t), this.#first) <= LEAST;
  }
}
