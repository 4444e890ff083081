/** What had the keyboard in a part of the board when it was left by key. */
const left = new WeakMap<Element, Element>();

/** Parts of the board in the order of the key, the table first for who comes from elsewhere; where the keyboard lands in each. */
const PANES = {
  'main > .table': '.desk svg',
  'main > .panel': '[tabindex="-1"]',
  '.rail': '[aria-current], :checked',
} as const;

/** Leads the keyboard to the next part of the board, or `back` to the one before: to what had it there, if it is there still. */
function goOn(board: HTMLElement, back: boolean): void {
  const panes = Object.entries(PANES).flatMap(([css, landing]) => {
    const pane = board.querySelector(css);
    const target =
      pane?.querySelector<HTMLElement>(landing) ?? pane?.querySelector<HTMLElement>('button:enabled');
    return pane && target ? [{ pane, target }] : [];
  });
  const now = document.activeElement;
  const at = panes.findIndex(({ pane }) => pane.contains(now));
  if (now && at >= 0) left.set(panes[at]!.pane, now);
  const { pane, target } = panes[(at < 0 ? 0 : at + (back ? panes.length - 1 : 1)) % panes.length] ?? {};
  const kept = pane && left.get(pane);
  ((kept && pane.contains(kept) ? kept : target) as HTMLElement | undefined)?.focus();
}

/**
 * The keys that hold beyond the table: F6 goes past all handles, from the table to the panel to the rail and round again; Ctrl+Z takes back,
 * with Shift or Ctrl+Y does again. What is being typed has its own taking back. Gives what stops it.
 */
export function shortcuts(svg: Element): () => void {
  function onKey(event: KeyboardEvent): void {
    const { key, ctrlKey, metaKey, shiftKey, target } = event;
    const board = svg.closest<HTMLElement>('.board');
    if (!board) return;
    if (key === 'F6') goOn(board, shiftKey);
    else if (!(ctrlKey || metaKey) || !/^[zy]$/i.test(key)) return;
    else if (typeof (target as HTMLInputElement).selectionStart === 'number') return;
    else {
      const does = shiftKey || /y/i.test(key) ? 'Control+Y' : 'Control+Z';
      board.querySelector<HTMLElement>(`[aria-keyshortcuts="${does}"]`)?.click();
    }
    event.preventDefault();
  }
  addEventListener('keydown', onKey);
  return () => removeEventListener('keydown', onKey);
}
