import { catchFocus } from './focus.ts';

/** For a notice, as an action: once it is read and gone the keyboard goes back to where it was, or to where the page begins. */
export function givesBack(_notice: HTMLElement): { destroy: () => void } {
  const before = document.activeElement;
  return {
    destroy: () => {
      const there = before?.isConnected && before !== document.body;
      const to = there ? before : document.querySelector('main [tabindex="-1"], header a');
      if (to instanceof HTMLElement) void catchFocus(to);
    },
  };
}
