import type { Point } from '../geometry/types.ts';

/** How the table is seen: `k` px for each mm, and where its zero lies in the drawing, px. */
export interface Sight {
  k: number;
  x: number;
  y: number;
}

/** A pointer, px of the drawing, and the place of the table that it keeps under it, mm. */
export interface Pull {
  readonly at: Point;
  readonly on: Point;
}

/** The place of the table under a point of the drawing, mm. */
export const placeUnder = ({ k, x, y }: Readonly<Sight>, at: Point): Point => ({
  x: (at.x - x) / k,
  y: (at.y - y) / k,
});

/** The table seen at `k` px for each mm, with a place of it under a point of the drawing. */
export const showing = (k: number, { at, on }: Pull): Sight => ({
  k,
  x: at.x - k * on.x,
  y: at.y - k * on.y,
});

const middle = (p: Point, q: Point): Point => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
const apart = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);

/** What two pointers make of the table: as much larger as they are farther apart, and their middle where it is between them. */
export function pinched(one: Pull, other: Pull, within: (k: number) => number): Sight {
  const k = within(apart(one.at, other.at) / apart(one.on, other.on));
  return showing(k, { at: middle(one.at, other.at), on: middle(one.on, other.on) });
}

/** Turns of the wheel that come sooner than this after the last one belong to it, ms. */
const SOON = 150;

/** How many times larger a turn of the wheel makes the table; a pinch on a trackpad comes as a small turn with the control key. */
const turned = ({ deltaY, deltaMode, ctrlKey }: WheelEvent): number =>
  2 **
  (-deltaY * (deltaMode === WheelEvent.DOM_DELTA_LINE ? 0.05 : deltaMode ? 1 : 0.002) * (ctrlKey ? 10 : 1));

interface Pressed {
  event: PointerEvent;
  /** What it pulls by, mm; undefined while it pulls nothing: a tool has it, or two others pull already. */
  on: Point | undefined;
}

/** Moves and enlarges what is seen of a drawing by wheel, by mouse or pen, and by one finger or two. */
export class Zoom {
  /** Limits of `k`. */
  least = 0;
  most = Infinity;
  readonly #svg: SVGSVGElement;
  readonly #sight: Sight & { readonly held: boolean };
  readonly #pressed = new Map<number, Pressed>();
  #wheeled = -Infinity;

  /** `sight` is written to; while it is `held` a tool has the pointer, and the table stands still. */
  constructor(svg: SVGSVGElement, sight: Sight & { readonly held: boolean }) {
    this.#svg = svg;
    this.#sight = sight;
  }

  /** Listens; gives what stops it. */
  attach(): () => void {
    const ended = new AbortController();
    const { signal } = ended;
    this.#svg.addEventListener('wheel', this.#wheel, { passive: false, signal });
    // On the window: a tool hears of a press first, and who pulls may leave the drawing.
    addEventListener('pointerdown', this.#down, { signal });
    addEventListener('pointermove', this.#move, { signal });
    addEventListener('pointerup', this.#up, { signal });
    addEventListener('pointercancel', this.#up, { signal });
    return () => ended.abort();
  }

  /** Whether anything pulls at the table. */
  get pulling(): boolean {
    return this.#pulls().length > 0;
  }

  /** Shows the table so; whatever pulls at it goes on from there. */
  show(sight: Readonly<Sight>): void {
    this.#set(sight);
    this.#goOn();
  }
  #goOn(): void {
    for (const one of this.#pressed.values()) if (one.on) one.on = this.#under(one.event);
  }

  within = (k: number): number => Math.max(this.least, Math.min(this.most, k));

  #at({ clientX, clientY }: MouseEvent): Point {
    const { left, top } = this.#svg.getBoundingClientRect();
    return { x: clientX - left, y: clientY - top };
  }
  #under = (event: MouseEvent): Point => placeUnder(this.#sight, this.#at(event));

  #set({ k, x, y }: Readonly<Sight>): void {
    this.#sight.k = k;
    this.#sight.x = x;
    this.#sight.y = y;
  }

  #pulls(): Pull[] {
    return [...this.#pressed.values()].flatMap(({ event, on }) => (on ? [{ at: this.#at(event), on }] : []));
  }

  #down = (event: PointerEvent): void => {
    // The right button asks for a menu.
    if (event.button > 1 || !(event.target instanceof Node && this.#svg.contains(event.target))) return;
    this.#pressed.set(event.pointerId, { event, on: undefined });
    if (this.#sight.held) return;
    // A finger that held something until the second one came pulls from now on, too.
    for (const one of this.#pressed.values())
      if (!one.on && this.#pulls().length < 2) one.on = this.#under(one.event);
  };

  #move = (event: PointerEvent): void => {
    const one = this.#pressed.get(event.pointerId);
    if (!one) return;
    one.event = event;
    if (!one.on) return;
    const [first, second] = this.#pulls();
    if (first) this.#set(second ? pinched(first, second, this.within) : showing(this.#sight.k, first));
  };

  #up = (event: PointerEvent): void => {
    // The one that stays pulls on from where it is.
    if (this.#pressed.delete(event.pointerId)) this.#goOn();
  };

  #wheel = (event: WheelEvent): void => {
    if (this.#sight.held) return;
    const { k: before } = this.#sight;
    const k = this.within(before * turned(event));
    // Where there is no more to be had the page may scroll, but not in the middle of a turn.
    if (k === before && event.timeStamp - this.#wheeled > SOON) return;
    event.preventDefault();
    this.#wheeled = event.timeStamp;
    this.show(showing(k, { at: this.#at(event), on: this.#under(event) }));
  };
}
