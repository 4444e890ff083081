import { untrack } from 'svelte';
import type { Box, Point } from '../geometry/types.ts';
import type { Zooming } from './zooming.ts';

/** Free desk round the pieces, and below them for two lines of their names above the ruler, px. */
const ROOM = 40;
const NAMES = 50;

/** Signs that a hand is there, and may want to look nearer. */
const SIGNS = ['pointermove', 'pointerdown', 'touchstart', 'wheel', 'keydown'] as const;
/** Without any the zoom is fetched after this time, ms: the table is first worked without it. */
const LATER = 2000;

/** Where the table is looked at from: the zoom, which d3-zoom leads once it is there, and the size of the window on it. px and mm. */
export class Viewport {
  /** px for each mm at full size. */
  k = $state(1);
  x = $state(0);
  y = $state(0);
  width = $state(0);
  height = $state(0);
  /** How the table is worked by keys, in words. */
  keys = $state('');
  /** Set while a tool holds the pointer, so that the table stands still. */
  held = false;
  #svg: SVGSVGElement | undefined;
  #zoom: Zooming | undefined;
  #fetched: Promise<void> | undefined;
  #extent: readonly [number, number] = [0, Infinity];
  #fitted = '';
  /** What is looked at since it was last fitted, for as long as no hand looks elsewhere. */
  #whole = '';

  /** Attaches wheel, pinch and drag to the drawing; gives what takes it off again. */
  attach(svg: SVGSVGElement): () => void {
    this.#svg = svg;
    const ask = (): void => void this.#fetch();
    for (const sign of SIGNS) addEventListener(sign, ask, { once: true, capture: true, passive: true });
    const later = setTimeout(ask, LATER);
    // A finger that carries something is no scrolling: left to itself the browser takes its end for a fling, and then
    // swallows the next tap.
    const still = (event: Event): void => {
      if (this.held) event.preventDefault();
    };
    svg.addEventListener('touchmove', still, { passive: false });
    const observer = new ResizeObserver(() => {
      this.width = svg.clientWidth;
      this.height = svg.clientHeight;
    });
    observer.observe(svg);
    this.width = svg.clientWidth;
    this.height = svg.clientHeight;
    return () => {
      observer.disconnect();
      svg.removeEventListener('touchmove', still);
      clearTimeout(later);
      for (const sign of SIGNS) removeEventListener(sign, ask, { capture: true });
      this.#svg = undefined;
      this.#zoom?.off();
    };
  }

  /** Fetches what zooms, and the keys, once; where it does not come the table stays as it is, and the next wish tries again. */
  #fetch(): Promise<void> {
    return (this.#fetched ??= import('./at-hand.ts').then(
      ({ atHand, TABLE_KEYS }) => {
        if (!this.#svg) return;
        this.keys = TABLE_KEYS;
        this.#zoom = atHand(
          this.#svg,
          () => this.held,
          (view) => Object.assign(this, view),
        );
        this.#zoom.show(this, this.#extent);
      },
      () => void (this.#fetched = undefined),
    ));
  }

  /**
   * Shows the whole box; with `once` only when that key was not the last one fitted, or when the box has grown out of the window
   * while nobody looked elsewhere.
   */
  fit(box: Box | undefined, once?: string): void {
    if (!box || !this.#svg || this.width < 20 || this.height < 20) return;
    if (once !== undefined && once === this.#fitted && !untrack(() => this.#outgrown(box))) return;
    // Whoever asks for all of it shall keep it until something else comes to be shown.
    this.#fitted = once ?? this.#fitted;
    const room = Math.min(ROOM, this.width / 12);
    const k = Math.min(
      (this.width - 2 * room) / (box.maxX - box.minX),
      (this.height - 2 * room - NAMES) / (box.maxY - box.minY),
    );
    const x = this.width / 2 - (k * (box.minX + box.maxX)) / 2;
    const y = (this.height - NAMES) / 2 - (k * (box.minY + box.maxY)) / 2;
    this.#extent = [k / 3, k * 24];
    if (this.#zoom) this.#zoom.show({ k, x, y }, this.#extent);
    else Object.assign(this, { k, x, y });
    this.#whole = untrack(this.#seen);
  }

  #seen = (): string => `${this.k} ${this.x} ${this.y}`;

  #outgrown({ minX, minY, maxX, maxY }: Box): boolean {
    if (this.#whole !== this.#seen()) return false;
    const [a, b] = [this.toScreen({ x: minX, y: minY }), this.toScreen({ x: maxX, y: maxY })];
    return a.x < 0 || a.y < 0 || b.x > this.width || b.y > this.height;
  }

  /** Enlarges about the middle, also where what zooms did not come. */
  zoomBy(factor: number): void {
    void this.#fetch().then(() => {
      if (this.#zoom) return this.#zoom.by(factor);
      const k = Math.min(Math.max(this.k * factor, this.#extent[0]), this.#extent[1]);
      const about = (at: number, size: number): number => size / 2 + ((at - size / 2) * k) / this.k;
      Object.assign(this, { k, x: about(this.x, this.width), y: about(this.y, this.height) });
    });
  }

  toScreen(p: Point): Point {
    return { x: this.x + this.k * p.x, y: this.y + this.k * p.y };
  }

  /** A point of the drawing in px, from its upper left corner, on the table in mm. */
  toTable(p: Point): Point {
    return { x: (p.x - this.x) / this.k, y: (p.y - this.y) / this.k };
  }
}
