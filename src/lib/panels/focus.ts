import { tick } from 'svelte';

/**
 * Puts the keyboard on `element` when what had it is gone from the page: a button that led to the next step, a form that
 * has done its work. Not before the learner has done anything, so that a page that opens starts at its top.
 */
export async function catchFocus(element: HTMLElement | undefined): Promise<void> {
  await tick();
  if (document.activeElement === document.body && navigator.userActivation?.hasBeenActive) element?.focus();
}
