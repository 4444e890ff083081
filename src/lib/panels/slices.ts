/** Asks for a time to work; `left` then says how many ms remain. Gives what takes the request back. */
export type Rest = (work: (left: () => number) => void) => () => void;

/** The browser's idle time; a few ms between two turns of the event loop where it does not tell. */
export const whenIdle: Rest = (work) => {
  if ('requestIdleCallback' in globalThis) {
    const id = requestIdleCallback((deadline) => work(() => deadline.timeRemaining()), { timeout: 300 });
    return () => cancelIdleCallback(id);
  }
  const id = setTimeout(() => {
    const end = performance.now() + 8;
    work(() => end - performance.now());
  }, 16);
  return () => clearTimeout(id);
};

/** A slice ends with this much of its time left, ms: one more piece of work could take longer. */
const SPARE = 4;

/**
 * Runs a search to its end in slices, so that the page stays live: at least one piece of it each time there is rest. `done` gets what it
 * returns, unless it was stopped before. Gives what stops it.
 */
export function inSlices<T>(
  search: Generator<unknown, T>,
  done: (result: T) => void,
  rest: Rest = whenIdle,
): () => void {
  let cancel = rest(function slice(left) {
    do {
      const step = search.next();
      if (step.done) return done(step.value);
    } while (left() > SPARE);
    cancel = rest(slice);
  });
  return () => cancel();
}
