import { select } from 'd3-selection';
import { zoom, zoomIdentity, zoomTransform } from 'd3-zoom';

/** Where a table is looked at from: px for each mm, and px by which it is moved. */
export interface View {
  readonly k: number;
  readonly x: number;
  readonly y: number;
}

/** Wheel, pinch and drag on a drawing. */
export interface Zooming {
  /** Looks from there, and lets the hand go on between so many px for each mm. */
  readonly show: (view: View, extent: readonly [number, number]) => void;
  /** Enlarges about the middle. */
  readonly by: (factor: number) => void;
  /** Pulls the drawing by so many px. */
  readonly pull: (x: number, y: number) => void;
  readonly off: () => void;
}

/** Lets hands zoom and pull a drawing, unless the pointer is `held` by something else; `seen` is told of every change. */
export function zooming(svg: SVGSVGElement, held: () => boolean, seen: (view: View) => void): Zooming {
  const behaviour = zoom<SVGSVGElement, unknown>()
    .filter(
      (event: Event) =>
        !held() && !(event instanceof MouseEvent && event.button > 1 && event.type === 'mousedown'),
    )
    .on('zoom', ({ transform: { k, x, y } }: { transform: View }) => seen({ k, x, y }));
  const selection = select(svg).call(behaviour).on('dblclick.zoom', null);

  return {
    show: ({ k, x, y }, extent) => {
      behaviour.scaleExtent([...extent]);
      selection.call(behaviour.transform, zoomIdentity.translate(x, y).scale(k));
    },
    by: (factor) => void selection.call(behaviour.scaleBy, factor),
    pull: (x, y) => {
      const { k } = zoomTransform(svg);
      selection.call(behaviour.translateBy, x / k, y / k);
    },
    off: () => void selection.on('.zoom', null),
  };
}
