/** A longer pause counts as this, ms: nobody knows whether it was thought or tea. Ours. */
const LONGEST = 60_000;

/** Time at work by step. `now` in ms; it is handed in, so that tests can say what time it is. */
export class Stopwatch {
  readonly #now: () => number;
  readonly #spent = new Map<string, number>();
  #last: number;

  constructor(now: () => number = () => performance.now()) {
    this.#now = now;
    this.#last = now();
  }
  /** Something was done in a step: the time since the last thing that was done counts for it. */
  tick(step: string): void {
    const now = this.#now();
    this.#spent.set(step, (this.#spent.get(step) ?? 0) + Math.min(now - this.#last, LONGEST));
    this.#last = now;
  }
  /** Seconds spent on a step since they were last taken. */
  take(step: string): number {
    this.tick(step);
    const spent = this.#spent.get(step) ?? 0;
    this.#spent.delete(step);
    return spent / 1000;
  }
}
