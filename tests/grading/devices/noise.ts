import type { Point } from '../../../src/lib/geometry/types.ts';

/*
 * What a hand is like that works with a mouse, a pen or a finger. Written down before any acceptance was looked at, and not to be
 * altered to reach a figure. Sizes are from memory of the literature named beside them, none was measured by us:
 *
 * - scatter of the end of an aimed movement: effective width We = 4.133 sd (ISO 9241-411; MacKenzie 1992). Mouse about 0.3 mm on the
 *   screen, pen on the screen 0.4 mm (with parallax), finger 1.5 mm (FFitts law: Bi, Li & Zhai 2013, absolute precision);
 * - where a finger is thought to be: each person's own offset, sd 1 mm after the system's correction (Holz & Baudisch 2010, 2011);
 *   a pen's parallax 0.3 mm;
 * - small corrections while sliding, with the eye on it: mouse 0.2 mm, pen 0.2 mm, finger 0.3 mm; a longer movement scatters by 8 % of
 *   its length with any of them (Schmidt et al. 1979, Meyer et al. 1988): that is skill of the arm, the same for all three;
 * - tremor while holding still, 8 to 12 Hz: mouse 0.08 mm (it lies on the desk), pen 0.1 mm, finger 0.12 mm with the sensor's noise;
 * - put down and lifted: the button shifts a mouse by 0.13 mm, a pen slips 0.2 mm in 40 ms, a finger rolls 0.4 mm towards the palm and
 *   0.4 mm anyhow in 80 ms (the centroid moves as the contact grows and shrinks);
 * - along a line drawn freehand: slow wandering, sd of mouse 0.5 mm, pen 0.35 mm, finger 0.6 mm, correlated over 0.4 s (steering with a
 *   mouse is worse than with a pen: Accot & Zhai 1999; the hand's own control: Plamondon). What is off at the start is seen once the line
 *   comes out from under the finger and is mended within 0.5 s or so;
 * - how it is sampled: mouse 125 Hz and whole px, pen 120 Hz, finger 60 Hz, both in parts of a px.
 *
 * What is the same for all: what the person means, how it is seen (readings to about half a millimetre of the pattern; by eye 0.2 mm on the
 * screen, under a finger 0.8 mm), when they are content, and how often they try.
 */

export interface Device {
  readonly name: 'mouse' | 'pen' | 'finger';
  /** px for each mm of the screen. */
  readonly perMm: number;
  /** The table's window on the whole page, px: measured in the app at 1440 × 900, 820 × 1180 and 390 × 844. */
  readonly window: { readonly width: number; readonly height: number };
  readonly hz: number;
  /** Whole px only. */
  readonly whole: boolean;
  // All below in mm of the screen, standard deviations each way.
  readonly scatter: number;
  readonly offset: number;
  readonly fine: number;
  readonly tremor: number;
  readonly slip: { readonly towards: number; readonly sd: number; readonly ms: number };
  readonly wander: number;
  /** What lies this near to the tip is hidden. */
  readonly hides: number;
}

export const DEVICES: readonly Device[] = [
  {
    name: 'mouse',
    perMm: 3.8,
    window: { width: 840, height: 800 },
    hz: 125,
    whole: true,
    scatter: 0.3,
    offset: 0,
    fine: 0.2,
    tremor: 0.08,
    slip: { towards: 0, sd: 0.13, ms: 30 },
    wander: 0.5,
    hides: 0,
  },
  {
    name: 'pen',
    perMm: 5.2,
    window: { width: 820, height: 562 },
    hz: 120,
    whole: false,
    scatter: 0.4,
    offset: 0.3,
    fine: 0.2,
    tremor: 0.1,
    slip: { towards: 0, sd: 0.2, ms: 40 },
    wander: 0.35,
    hides: 0,
  },
  {
    name: 'finger',
    perMm: 6,
    window: { width: 390, height: 379 },
    hz: 60,
    whole: false,
    scatter: 1.5,
    offset: 1,
    fine: 0.3,
    tremor: 0.12,
    slip: { towards: 0.4, sd: 0.4, ms: 80 },
    wander: 0.6,
    hides: 6,
  },
];

/** A movement scatters by this part of its length. */
export const OF_LENGTH = 0.08;
/** Sight: sd in mm of the screen, free and under the finger; of a reading, in mm of the pattern. */
export const SEES = { free: 0.2, hidden: 0.8, reading: 0.3 } as const;
/** Corrections while something is held, and tries of one thing (misses are tries). */
export const CORRECTIONS = 4;
export const PATIENCE = 3;
/** Wandering of a free line is correlated over this time; a line is drawn in so long, whatever its size; an offset is mended in this, s. */
export const FREEHAND = { correlated: 0.4, lasts: 3, mended: 0.5 } as const;
/** The hand rests so long before it lets go, s. */
export const RESTS = 0.3;
/** What is worked on fills this part of the window's narrower side: so far a person enlarges, at most so many times. */
export const ENLARGED = { fills: 0.7, most: 4 } as const;

/** Where the tip is at a time. px, ms. */
export interface Sample extends Point {
  readonly t: number;
}

/** mulberry32 (public domain, T. Ettinger) and Box and Muller's normal deviate. */
export class Chance {
  #a: number;
  constructor(seed: number) {
    this.#a = seed >>> 0;
  }
  next(): number {
    this.#a = (this.#a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(this.#a ^ (this.#a >>> 15), this.#a | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }
  normal(sd = 1, mean = 0): number {
    return mean + sd * Math.sqrt(-2 * Math.log(1 - this.next())) * Math.cos(2 * Math.PI * this.next());
  }
  around(p: Point, sd: number): Point {
    return { x: p.x + this.normal(sd), y: p.y + this.normal(sd) };
  }
}

/** The tip of a device in a hand: where it comes to when the person means a place. All in px. */
export class Tip {
  readonly device: Device;
  readonly chance: Chance;
  /** By how much this person is off with this device, always. */
  readonly #off: Point;
  at: Point = { x: 0, y: 0 };
  #t = 0;

  constructor(device: Device, chance: Chance) {
    this.device = device;
    this.chance = chance;
    this.#off = chance.around({ x: 0, y: 0 }, device.offset * device.perMm);
  }

  #px = (mm: number): number => mm * this.device.perMm;
  #sampled(p: Point, t: number): Sample {
    return this.device.whole ? { x: Math.round(p.x), y: Math.round(p.y), t } : { ...p, t };
  }
  /** A sample now. */
  get now(): Sample {
    return this.#sampled(this.at, this.#t);
  }

  /** Comes down where a place is meant. */
  press(meant: Point): Sample {
    const off = { x: meant.x + this.#off.x, y: meant.y + this.#off.y };
    this.at = this.chance.around(off, this.#px(this.device.scatter));
    this.#t += 500;
    return this.now;
  }

  /** Goes on by so much, in one movement. */
  slide(by: Point): Sample {
    const length = Math.sqrt(by.x * by.x + by.y * by.y);
    const sd = Math.max(this.#px(this.device.fine), OF_LENGTH * length);
    this.at = this.chance.around({ x: this.at.x + by.x, y: this.at.y + by.y }, sd);
    this.#t += 300;
    return this.now;
  }

  /** Rests, trembling, and is lifted: the samples until it is off. */
  lift(): Sample[] {
    const { tremor, slip, hz } = this.device;
    const step = 1000 / hz;
    const rest = this.at;
    const end = this.chance.around({ x: 0, y: this.#px(slip.towards) }, this.#px(slip.sd));
    const out: Sample[] = [];
    const start = this.#t;
    const whole = 1000 * RESTS + slip.ms;
    for (let ms = step; ms <= whole + 1e-9; ms += step) {
      const slipped = Math.min(1, Math.max(0, (ms - 1000 * RESTS) / slip.ms));
      const p = this.chance.around(
        { x: rest.x + end.x * slipped, y: rest.y + end.y * slipped },
        this.#px(tremor),
      );
      this.#t = start + ms;
      this.at = p;
      out.push(this.now);
    }
    return out;
  }

  /** Presses at once and lifts: how far it slips in between is the slip of lifting alone. */
  tap(meant: Point): Sample[] {
    const down = this.press(meant);
    const { slip } = this.device;
    this.at = this.chance.around({ x: this.at.x, y: this.at.y + this.#px(slip.towards) }, this.#px(slip.sd));
    this.#t += slip.ms;
    return [down, this.now];
  }

  /** Follows a path that is meant, `along(0)` to `along(1)`: the samples from the press to the last one. */
  draw(along: (part: number) => Point): Sample[] {
    const { hz, wander, tremor, scatter } = this.device;
    const count = Math.round(FREEHAND.lasts * hz);
    const start = this.chance.around(this.#off, this.#px(scatter));
    const keep = Math.exp(-1 / hz / FREEHAND.correlated);
    const fresh = this.#px(wander) * Math.sqrt(1 - keep * keep);
    let drift: Point = { x: 0, y: 0 };
    const out: Sample[] = [];
    for (let i = 0; i <= count; i++) {
      const left = Math.exp(-i / hz / FREEHAND.mended);
      drift = this.chance.around({ x: drift.x * keep, y: drift.y * keep }, fresh);
      // Quicker in the middle than at its ends, as hands are.
      const part = i / count;
      const p = along(part * part * (3 - 2 * part));
      const meant = { x: p.x + drift.x + start.x * left, y: p.y + drift.y + start.y * left };
      this.#t += 1000 / hz;
      this.at = this.chance.around(meant, this.#px(tremor));
      out.push(this.now);
    }
    return out;
  }

  /** How a place on the screen looks to be, px. `under`: it lies where the tip is. */
  sees(p: Point, under: boolean): Point {
    const hidden = under && this.device.hides > 0;
    return this.chance.around(p, this.#px(hidden ? SEES.hidden : SEES.free));
  }
}
