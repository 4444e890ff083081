import type { LessonSnapshot } from '../machines/lesson.ts';
import type { LessonEvent } from '../machines/lesson-context.ts';
import type { Command, Refusal, Work } from '../recipe/types.ts';
import type { Units } from '../strings/units.ts';
import { announce, unsay } from '../table/announcer.ts';

interface Session {
  readonly snapshot: LessonSnapshot | undefined;
  send: (event: LessonEvent) => void;
}

/** Gives commands to the session of a table. One that the table refuses is taken off again, and why is said. */
export class Giving {
  /** Why the last one was refused, or what it took along; whoever shows the table clears it once the table has changed. */
  message = $state('');
  #said = '';
  readonly #session: Session;
  readonly #units: () => Units;

  /** `units`: those of the learner now, for what is said. */
  constructor(session: Session, units: () => Units) {
    this.#session = session;
    this.#units = units;
  }

  give(command: Command): void {
    const unfollowed = () => this.#session.snapshot?.context.unfollowed ?? [];
    const before = unfollowed().length;
    const was = this.#table();
    this.#session.send({ type: 'command.add', command });
    const last = unfollowed().at(-1);
    if (unfollowed().length > before && last) {
      this.#session.send({ type: 'command.undo' });
      void this.refuse(last.refused);
    } else void this.#tell(command, was);
  }

  #table(): Work | undefined {
    const context = this.#session.snapshot?.context;
    return context?.steps.get(context.step)?.after;
  }

  /** Says what was done, and when a cap went with the sewn point that was moved. */
  async #tell(command: Command, was: Work | undefined): Promise<void> {
    const now = this.#table();
    const told = await import('./told.ts').catch(() => undefined);
    // It is said of this table only.
    if (!told || now !== this.#table()) return;
    const { gone, said } = told.toldDone(command, [was, now], this.#units());
    this.message = gone;
    announce((this.#said = said));
  }
  #say(text: string): void {
    this.message = this.#said = text;
    announce(text);
  }

  /** The table has changed: what was said of it before does not hold of this one. */
  clear(): void {
    unsay(this.#said);
    this.message = '';
  }

  async refuse(refusal: Refusal): Promise<void> {
    const { explain } = await import('../strings/explain.ts');
    this.#say(explain(refusal, this.#units()));
  }
}
