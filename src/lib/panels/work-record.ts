import type { Mark } from '../grading/types.ts';
import type { Lesson, LessonToWork } from '../lessons/types.ts';
import type { LessonSnapshot } from '../machines/lesson.ts';
import { areSame, type LessonEvent } from '../machines/lesson-context.ts';
import type { Command } from '../recipe/types.ts';
import type { AtWork } from './recorder.ts';
import { Stopwatch } from './stopwatch.ts';

// What writes it down is fetched with the first thing to write: the table does not wait for it.
const recorder = () => import('./recorder.ts');

interface Lying {
  readonly all: readonly Command[];
  /** What was done in the step itself. */
  readonly own: readonly Command[];
  readonly hints: number;
  readonly verdict: Mark['verdict'];
}

/** Watches the work on a lesson or drill, and has written down what was marked, with the help that was taken and the time. */
export class WorkRecord {
  readonly #lesson: LessonToWork;
  readonly #whole: () => Promise<Lesson>;
  readonly #watch = new Stopwatch();
  /** Steps whose worked solution was seen since they were last right. */
  readonly #shown = new Set<string>();
  /** What lay on the table, with which hints, at the last mark of a step. */
  readonly #marked = new Map<string, Lying>();
  /** What came from a file. */
  #given: ReadonlySet<Command> = new Set();

  #written: Promise<unknown> = Promise.resolve();

  /** `whole` gives the lesson with what its steps practise. */
  constructor(lesson: LessonToWork, whole: () => Promise<Lesson>) {
    this.#lesson = lesson;
    this.#whole = whole;
  }

  /** Comes when all is written down that was seen so far. Never rejects. */
  get written(): Promise<unknown> {
    return this.#written;
  }
  #write(one: Promise<unknown>): void {
    this.#written = Promise.allSettled([this.#written, one]);
  }

  /** Fetches what writes down, so that a mark is not lost when the page is left right after it. Never rejects. */
  async ready(): Promise<void> {
    await recorder().catch(() => {});
  }

  /** Sees what is done, before it is. */
  sees(event: LessonEvent, snapshot: LessonSnapshot | undefined): void {
    if (!snapshot) return;
    const { step } = snapshot.context;
    this.#watch.tick(step);
    let hints: number | undefined;
    if (event.type === 'hint.next') hints = (snapshot.context.hints[step] ?? 0) + 1;
    // What is watched before the lesson is begun is its introduction.
    else if (event.type !== 'solution.show' || snapshot.matches('opening')) return;
    else this.#shown.add(step);
    this.#write(this.#atWork(snapshot, step, (work, { recordHelp }) => recordHelp(work, hints)));
  }

  /** What comes to lie on the table, kept or from a file: what is marked of it by itself is old work, and nothing to be written down. */
  opened(snapshot: LessonSnapshot | undefined, fromFile = false): void {
    this.#marked.clear();
    if (!snapshot) return;
    const { history, marks } = snapshot.context;
    for (const [step, mark] of Object.entries(marks))
      this.#marked.set(step, lyingAt(snapshot, step, mark.verdict));
    this.#given = new Set(fromFile ? history.commands : []);
  }

  /** Whether all that was done in a step came from a file. */
  given(own: readonly Command[]): boolean {
    return own.length > 0 && own.every((one) => this.#given.has(one));
  }

  /**
   * A step was marked. Marking again what has not changed is nothing new, nor is what was right and lies as it did then: checking old work
   * is no practice.
   */
  marked(snapshot: LessonSnapshot | undefined, step: string): void {
    const mark = snapshot?.context.marks[step];
    if (!mark || !snapshot) return;
    const before = this.#marked.get(step);
    const now = lyingAt(snapshot, step, mark.verdict);
    if (before?.all === now.all && before.hints === now.hints) return;
    if (before?.verdict === 'accepted' && areSame(before.own, now.own)) return;
    this.#marked.set(step, now);
    const { hints } = now;
    const worked = this.#shown.has(step);
    if (mark.verdict === 'accepted') this.#shown.delete(step);
    const seconds = this.#watch.take(step);
    const old = this.given(now.own);
    this.#write(
      this.#atWork(snapshot, step, (work, { recordMark }) =>
        recordMark({ ...work, mark, hints, worked, seconds, old }),
      ),
    );
  }

  /** Has `write` write down what is at work on the table now, once it is there. */
  async #atWork(
    { context }: LessonSnapshot,
    id: string,
    write: (work: AtWork, by: Awaited<ReturnType<typeof recorder>>) => Promise<unknown>,
  ): Promise<void> {
    const [{ steps, content }, by] = await Promise.all([this.#whole(), recorder()]);
    const step = steps.find((one) => one.id === id);
    if (!step) return;
    const kind = this.#lesson.id.startsWith('drill-') ? 'drill' : 'lesson';
    const exercise = { kind, id: this.#lesson.id, content } as const;
    await write({ exercise, step, commands: context.steps.get(id)?.commands ?? [] }, by);
  }
}

function lyingAt({ context }: LessonSnapshot, step: string, verdict: Mark['verdict']): Lying {
  const own = context.steps.get(step)?.commands ?? [];
  return { all: context.history.commands, own, hints: context.hints[step] ?? 0, verdict };
}
