/** What d3-zoom hears and takes hold of: an element, or the window. What it binds is kept on it, as d3 does. */
interface Held extends EventTarget {
  __on?: Listening[];
  __data__?: unknown;
  style?: CSSStyleDeclaration;
  [property: string]: unknown;
}

type Heard = (this: Held, event: Event, datum?: unknown) => void;

interface Listening {
  readonly type: string;
  readonly name: string;
  readonly value: Heard;
  readonly listener: (event: Event) => void;
  readonly options: Options | undefined;
}

type Options = boolean | AddEventListenerOptions;

/**
 * Stands in for d3-selection, of which d3-zoom and d3-drag use these few methods only, each on one element: the lesson page is some
 * 4 KB lighter. They behave as those of d3-selection 3.
 */
class Selection {
  readonly #held: Held | undefined;
  constructor(held: Held | undefined) {
    this.#held = held;
  }

  call(given: (selection: this, ...args: unknown[]) => void, ...args: unknown[]): this {
    given(this, ...args);
    return this;
  }
  each(given: (this: Held, datum?: unknown) => void): this {
    if (this.#held) given.call(this.#held, this.#held.__data__);
    return this;
  }
  filter(keep: (this: Held) => boolean): Selection {
    return this.#held && keep.call(this.#held) ? this : new Selection(undefined);
  }
  selection(): this {
    return this;
  }
  /** Nothing is being animated. */
  interrupt(): this {
    return this;
  }
  datum(): unknown {
    return this.#held?.__data__;
  }
  style(name: string, value: string): this {
    this.#held?.style?.setProperty(name, value);
    return this;
  }
  property(name: string, value: unknown): this {
    return this.each(function () {
      this[name] = typeof value === 'function' ? (value as () => unknown).call(this) : value;
    });
  }

  /** Hears `type.name`, several of them with blanks between; null stops that, with `.name` all of that name; without a value gives it. */
  on(names: string, value?: Heard | null, options?: Options): this | Heard | undefined {
    const held = this.#held;
    const wanted = names.split(' ').map((one) => one.split('.') as [string, string?]);
    const isMeant = (one: Listening): boolean =>
      wanted.some(([type, name = '']) => (type === '' || type === one.type) && name === one.name);
    if (value === undefined) return held?.__on?.find(isMeant)?.value;
    if (!held) return this;
    const all = held.__on ?? [];
    for (const one of all.filter(isMeant)) held.removeEventListener(one.type, one.listener, one.options);
    held.__on = all.filter((one) => !isMeant(one));
    if (value)
      for (const [type, name = ''] of wanted) {
        const listener = (event: Event): void => value.call(held, event, held.__data__);
        held.addEventListener(type, listener, options);
        held.__on.push({ type, name, value, listener, options });
      }
    return this;
  }
}

export const select = (held: EventTarget): Selection => new Selection(held as Held);

/** Where the pointer is in an element, px of its own; in an SVG element in user units. */
export function pointer(
  event: MouseEvent | Touch,
  node: Element | null = (event as MouseEvent).currentTarget as Element | null,
): [number, number] {
  const svg = (node as SVGElement | null)?.ownerSVGElement ?? node;
  if (svg instanceof SVGSVGElement) {
    const matrix = (node as SVGGraphicsElement).getScreenCTM()!.inverse();
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
    return [x, y];
  }
  return [event.pageX, event.pageY];
}
