import { tick } from 'svelte';

let acted = false;
// The page is also drawn on the server, where nobody acts.
if (typeof document !== 'undefined')
  for (const type of ['keydown', 'pointerdown'])
    addEventListener(type, () => (acted = true), { once: true, capture: true });

/**
 * Puts the keyboard on `element` when what had it is gone from the page or dead: a button that led to the next step, a
 * form that has done its work. Not before the learner has done anything, so that a page that opens starts at its top.
 */
export async function catchFocus(element: HTMLElement | undefined): Promise<void> {
  await tick();
  const at = document.activeElement;
  if (acted && (at === document.body || at?.matches(':disabled'))) element?.focus();
}
