import { select } from 'd3-selection';
import { zoom, zoomIdentity, type ZoomBehavior } from 'd3-zoom';
import type { Box, Point } from '../geometry/types.ts';

/** Free desk round the pieces, and below them for their names, px. */
const ROOM = 40;
const NAMES = 34;

/** Where the table is looked at from: the zoom, kept by d3-zoom, and the size of the window on it. px and mm. */
export class Viewport {
  /** px for each mm at full size. */
  k = $state(1);
  x = $state(0);
  y = $state(0);
  width = $state(0);
  height = $state(0);
  /** Set while a tool holds the pointer, so that the table stands still. */
  held = false;
  #svg: SVGSVGElement | undefined;
  #zoom: ZoomBehavior<SVGSVGElement, unknown> | undefined;
  #fitted = '';

  /** Attaches wheel, pinch and drag to the drawing; gives what takes it off again. */
  attach(svg: SVGSVGElement): () => void {
    this.#svg = svg;
    this.#zoom = zoom<SVGSVGElement, unknown>()
      .filter(
        (event: Event) =>
          !this.held && !(event instanceof MouseEvent && event.button > 1 && event.type === 'mousedown'),
      )
      .on('zoom', ({ transform }) => {
        this.k = transform.k;
        this.x = transform.x;
        this.y = transform.y;
      });
    const selection = select(svg).call(this.#zoom).on('dblclick.zoom', null);
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
      selection.on('.zoom', null);
    };
  }

  /** Shows the whole box; with `once` only when that key was not the last one fitted. */
  fit(box: Box | undefined, once?: string): void {
    if (!box || !this.#svg || !this.#zoom || this.width < 20 || this.height < 20) return;
    if (once !== undefined && once === this.#fitted) return;
    this.#fitted = once ?? '';
    const room = Math.min(ROOM, this.width / 12);
    const k = Math.min(
      (this.width - 2 * room) / (box.maxX - box.minX),
      (this.height - 2 * room - NAMES) / (box.maxY - box.minY),
    );
    const x = this.width / 2 - (k * (box.minX + box.maxX)) / 2;
    const y = (this.height - NAMES) / 2 - (k * (box.minY + box.maxY)) / 2;
    this.#zoom.scaleExtent([k / 3, k * 24]);
    select(this.#svg).call(this.#zoom.transform, zoomIdentity.translate(x, y).scale(k));
  }

  zoomBy(factor: number): void {
    if (this.#svg && this.#zoom) select(this.#svg).call(this.#zoom.scaleBy, factor);
  }

  toScreen(p: Point): Point {
    return { x: this.x + this.k * p.x, y: this.y + this.k * p.y };
  }

  /** A point of the drawing in px, from its upper left corner, on the table in mm. */
  toTable(p: Point): Point {
    return { x: (p.x - this.x) / this.k, y: (p.y - this.y) / this.k };
  }
}
