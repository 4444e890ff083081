import { SOLUTION_UNFETCHED } from '../strings/unfetched.ts';
import type { Frame } from '../table/replay.ts';
import type { Demonstration } from './demonstration.ts';
import type { LessonSession } from './session.svelte.ts';

/** The worked solution while it is watched over the learner's own table. */
export class Watching {
  demonstration = $state.raw<Demonstration>();
  /** Where it stands. */
  frame = $state.raw<Frame>();
  readonly #session: LessonSession;

  constructor(session: LessonSession) {
    this.#session = session;
  }

  /** Shows the open step worked over the table before it, or all of the lesson; `onBegin` once what makes it is there. Where it cannot be fetched, that is said. */
  async begin(all: boolean, onBegin: () => void): Promise<void> {
    const session = this.#session;
    session.unfetched = undefined;
    const by = await session.withRules(import('./demonstration.ts')).catch(() => undefined);
    if (!by) {
      session.waits(SOLUTION_UNFETCHED, () => this.begin(all, onBegin));
      return;
    }
    const shown = by.demonstrationOf(session, all);
    if (!shown) return;
    onBegin();
    this.demonstration = await shown;
    session.send({ type: 'solution.show' });
  }

  stop(): void {
    this.demonstration = undefined;
    this.frame = undefined;
    this.#session.send({ type: 'solution.stop' });
  }
}
