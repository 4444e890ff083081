import { writable } from 'svelte/store';

/** What a screen reader is to hear next; `n` grows, so that the same words can be said twice. */
export const announced = writable({ text: '', n: 0 });

export const announce = (text: string): void => announced.update(({ n }) => ({ text, n: n + 1 }));

/** Takes back what was said, unless something else was said since: whoever reads the page later is not to come upon it. */
export const unsay = (text: string): void =>
  announced.update((last) => (last.text === text ? { ...last, text: '' } : last));
