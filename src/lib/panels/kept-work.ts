import type { LessonSnapshot } from '../machines/lesson.ts';

/** Knows whether there is something to keep: showing a hint or a mark again, or what a lesson begins with, is nothing new. */
export class KeptWork {
  #last: readonly unknown[] | undefined;

  /** Whether what is kept of a lesson differs from the last time that it was asked for; the first time it does not. */
  isNew(snapshot: LessonSnapshot): boolean {
    const { history, base, step, flagged, hints, demonstrationSeen, checked } = snapshot.context;
    const handedIn = snapshot.matches('handedIn');
    const now = [history.commands, base, step, flagged, hints, demonstrationSeen, checked, handedIn];
    const last = this.#last;
    this.#last = now;
    return last !== undefined && now.some((part, i) => part !== last[i]);
  }
}
