/** At the table's lower end the words on its keys lie on it, px. */
const WORDS = 76;

const short = (from: number, to: number, place: number): number =>
  place < from || place > to ? (from + to) / 2 - place : 0;

/**
 * Brings what has the keyboard into sight, where the table is looked at from so near that it lies outside: `pull` moves the drawing by px.
 * Not while the pointer is `held` by something. Gives what stops it.
 */
export function keepInSight(
  svg: SVGSVGElement,
  held: () => boolean,
  pull: (x: number, y: number) => void,
): () => void {
  function reveal(): void {
    const at = document.activeElement;
    if (held() || !at || at === svg || !svg.contains(at)) return;
    const [seen, box] = [svg, at].map((one) => one.getBoundingClientRect()) as [DOMRect, DOMRect];
    const x = short(seen.left, seen.right, (box.left + box.right) / 2);
    const y = short(seen.top, seen.bottom - WORDS, (box.top + box.bottom) / 2);
    if (x !== 0 || y !== 0) pull(x, y);
  }
  const moved = ({ key }: KeyboardEvent): void => void (key.startsWith('Arrow') && reveal());
  svg.addEventListener('focusin', reveal);
  svg.addEventListener('keyup', moved);
  return () => {
    svg.removeEventListener('focusin', reveal);
    svg.removeEventListener('keyup', moved);
  };
}
