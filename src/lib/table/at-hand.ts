import { keepInSight } from './in-sight.ts';
import { shortcuts } from './shortcuts.ts';
import { zooming, type View, type Zooming } from './zooming.ts';

export { TABLE_KEYS } from '../strings/table-keys.ts';

/** What a table is given once somebody is there to work it, by hand or by keys: it can be zoomed and pulled, and its keys hold. As `zooming`. */
export function atHand(svg: SVGSVGElement, held: () => boolean, seen: (view: View) => void): Zooming {
  const zoom = zooming(svg, held, seen);
  const stops = [keepInSight(svg, held, zoom.pull), shortcuts(svg), zoom.off];
  return { ...zoom, off: () => stops.forEach((stop) => stop()) };
}
