import { select } from 'd3-selection';
import { shortcuts } from './shortcuts.ts';
import { zoom, zoomIdentity, zoomTransform } from 'd3-zoom';

export { TABLE_KEYS } from '../strings/table-keys.ts';

/** Where a table is looked at from: px for each mm, and px by which it is moved. */
export interface View {
  readonly k: number;
  readonly x: number;
  readonly y: number;
}

/** Wheel, pinch, drag and keys on a drawing. */
export interface Zooming {
  /** Looks from there, and lets the hand go on between so many px for each mm. */
  readonly show: (view: View, extent: readonly [number, number]) => void;
  /** Enlarges about the middle. */
  readonly by: (factor: number) => void;
  readonly off: () => void;
}

/** At the table's lower end the words on its keys lie on it, px. */
const WORDS = 76;

/** Lets hands zoom and pull a drawing, and listens to its shortcuts, unless the pointer is `held` by something else; `seen` is told of every change. */
export function zooming(svg: SVGSVGElement, held: () => boolean, seen: (view: View) => void): Zooming {
  const behaviour = zoom<SVGSVGElement, unknown>()
    .filter(
      (event: Event) =>
        !held() && !(event instanceof MouseEvent && event.button > 1 && event.type === 'mousedown'),
    )
    .on('zoom', ({ transform: { k, x, y } }: { transform: View }) => seen({ k, x, y }));
  const selection = select(svg).call(behaviour).on('dblclick.zoom', null);

  /** What has the keyboard comes into sight, when the table was drawn so near that it lies outside. */
  function reveal(): void {
    const at = document.activeElement;
    if (held() || !at || at === svg || !svg.contains(at)) return;
    const [seen, box] = [svg, at].map((one) => one.getBoundingClientRect()) as [DOMRect, DOMRect];
    const short = (from: number, to: number, place: number): number =>
      place < from || place > to ? (from + to) / 2 - place : 0;
    const x = short(seen.left, seen.right, (box.left + box.right) / 2);
    const y = short(seen.top, seen.bottom - WORDS, (box.top + box.bottom) / 2);
    const { k } = zoomTransform(svg);
    if (x !== 0 || y !== 0) selection.call(behaviour.translateBy, x / k, y / k);
  }
  const moved = ({ key }: KeyboardEvent): void => void (key.startsWith('Arrow') && reveal());
  const off = shortcuts(svg);
  svg.addEventListener('focusin', reveal);
  svg.addEventListener('keyup', moved);

  return {
    show: ({ k, x, y }, extent) => {
      behaviour.scaleExtent([...extent]);
      selection.call(behaviour.transform, zoomIdentity.translate(x, y).scale(k));
    },
    by: (factor) => void selection.call(behaviour.scaleBy, factor),
    off: () => {
      off();
      svg.removeEventListener('focusin', reveal);
      svg.removeEventListener('keyup', moved);
      selection.on('.zoom', null);
    },
  };
}
