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

/** For a group of buttons, as an action: where the one that was pressed is dead then, the keyboard goes to the first that is not. */
export function staying(group: HTMLElement): void {
  // Not before what was pressed has done its work: its own listener may come after this one.
  group.addEventListener('click', () =>
    setTimeout(() => catchFocus(group.querySelector<HTMLElement>('button:enabled') ?? group)),
  );
}
