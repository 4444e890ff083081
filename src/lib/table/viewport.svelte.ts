import type { Box, Point } from '../geometry/types.ts';
import { placeUnder, showing, Zoom } from './zoom.ts';

/** Free desk round the pieces, and below them for their names, px. */
const ROOM = 40;
const NAMES = 34;

/** Where the table is looked at from: the zoom, and the size of the window on it. px and mm. */
export class Viewport {
  /** px for each mm at full size. */
  k = $state(1);
  x = $state(0);
  y = $state(0);
  width = $state(0);
  height = $state(0);
  /** Set while a tool holds the pointer, so that the table stands still. */
  held = false;
  #zoom: Zoom | undefined;
  #fitted = '';

  /** Attaches wheel, pinch and drag to the drawing; gives what takes it off again. */
  attach(svg: SVGSVGElement): () => void {
    const zoom = new Zoom(svg, this);
    this.#zoom = zoom;
    const ended = zoom.attach();
    // A finger that carries something is no scrolling: left to itself the browser takes its end for a fling, and then
    // swallows the next tap.
    const still = (event: Event): void => {
      if (this.held || zoom.pulling) event.preventDefault();
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
      ended();
    };
  }

  /** Shows the whole box; with `once` only when that key was not the last one fitted. */
  fit(box: Box | undefined, once?: string): void {
    if (!box || !this.#zoom || this.width < 20 || this.height < 20) return;
    if (once !== undefined && once === this.#fitted) return;
    this.#fitted = once ?? '';
    const room = Math.min(ROOM, this.width / 12);
    const k = Math.min(
      (this.width - 2 * room) / (box.maxX - box.minX),
      (this.height - 2 * room - NAMES) / (box.maxY - box.minY),
    );
    const x = this.width / 2 - (k * (box.minX + box.maxX)) / 2;
    const y = (this.height - NAMES) / 2 - (k * (box.minY + box.maxY)) / 2;
    this.#zoom.least = k / 3;
    this.#zoom.most = k * 24;
    this.#zoom.show({ k, x, y });
  }

  /** Enlarges about the middle of the window. */
  zoomBy(factor: number): void {
    const at = { x: this.width / 2, y: this.height / 2 };
    const k = this.#zoom?.within(this.k * factor);
    if (k) this.#zoom?.show(showing(k, { at, on: this.toTable(at) }));
  }

  toScreen(p: Point): Point {
    return { x: this.x + this.k * p.x, y: this.y + this.k * p.y };
  }

  /** A point of the drawing in px, from its upper left corner, on the table in mm. */
  toTable(p: Point): Point {
    return placeUnder(this, p);
  }
}
