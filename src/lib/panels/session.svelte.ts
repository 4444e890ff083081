import { createActor } from 'xstate';
import { blockOf } from '../lessons/block.ts';
import type { Lesson, LessonStep, LessonToWork, StepToWork } from '../lessons/types.ts';
import { lessonMachine, type Grade, type LessonActor, type LessonSnapshot } from '../machines/lesson.ts';
import { keptOf, type LessonEvent, type LessonInput } from '../machines/lesson-context.ts';
import { progressStore, type Notice, type ProgressStore } from '../progress/store.ts';
import type { Problem } from '../recipe/problem.ts';
import type { Attempt, Command, CommandName } from '../recipe/types.ts';
import { MARK_UNFETCHED, UNFETCHED } from '../strings/unfetched.ts';
import { announce } from '../table/announcer.ts';
import type { GivenOn } from './given.ts';
import { areFetched, fetchFor } from '../table/phases/index.ts';
import { KeptWork } from './kept-work.ts';
import { toolsAfter, toolsNeeded } from './needed-tools.ts';
import { WorkRecord } from './work-record.ts';

/** A lesson being worked on: its machine, and where its progress is kept. */
export class LessonSession {
  snapshot = $state.raw<LessonSnapshot>();
  /** What storage had to say, until the learner puts it away. */
  notice = $state.raw<Notice>();
  /** Why the last file was not opened. */
  problems = $state.raw<readonly Problem[]>([]);

  /** What waits for something that could not be fetched: what is said of it, and how it is tried again. */
  unfetched = $state.raw<{ readonly said: string; readonly again: () => unknown }>();

  /** The step that the learner came to practise once more. */
  anew = $state<string>();

  /** Worked as a test. */
  readonly test: boolean;
  #actor: LessonActor | undefined;
  #store: ProgressStore | undefined;
  readonly #kept = new KeptWork();
  readonly #begun: LessonToWork;
  readonly #fetchWhole: () => Promise<Lesson>;
  /** The lesson with what its steps are marked by, once that is there. */
  #whole = $state.raw<Lesson>();
  #grade: Grade<LessonStep> | undefined;
  readonly #record: WorkRecord;
  #done = false;
  #opening: Promise<void> = Promise.resolve();

  /** `whole` gives the lesson with what its steps are marked by. */
  constructor(lesson: LessonToWork, whole: () => Promise<Lesson>, test = false) {
    this.#begun = lesson;
    this.#fetchWhole = whole;
    this.test = test;
    this.#record = new WorkRecord(lesson, () => this.whole());
  }

  /** The lesson, as much of it as is there: the texts of later steps come with the first mark. */
  get lesson(): LessonToWork {
    return this.#whole ?? this.#begun;
  }
  /** The lesson with what its steps are marked by. Rejects where that cannot be fetched. */
  async whole(): Promise<Lesson> {
    return (this.#whole ??= await this.#fetchWhole());
  }
  /** The same where it is there: it comes with the first mark. Throws Error before. */
  get rules(): Lesson {
    if (!this.#whole) throw new Error('the rules of the lesson were asked for before they were fetched');
    return this.#whole;
  }
  /** A step with what it is marked by. Throws as `rules`. */
  ruleOf({ id }: StepToWork): LessonStep {
    return this.rules.steps.find((one) => one.id === id)!;
  }
  /** A part of the page that needs the rules: it comes with them. Rejects where either cannot be fetched. */
  async withRules<Part>(part: Promise<Part>): Promise<Part> {
    return (await Promise.all([part, this.whole()]))[0];
  }

  /** A test is kept beside the lesson's own work. */
  get #key(): string {
    return this.test ? `${this.lesson.id}:test` : this.lesson.id;
  }

  /** Loads what was kept and starts; storage that does not work is told once, and the lesson starts fresh. */
  async start(): Promise<void> {
    const { indexedDbBackend } = await import('../progress/indexed-db.ts');
    this.#store = progressStore(indexedDbBackend, (notice) => (this.notice = notice));
    let kept = await this.#store.load(this.#key);
    if (this.test) kept = (await import('./test-block.ts')).testOf(kept);
    // Steps that were left behind are marked again at once, those left empty too; a fresh lesson fetches the checks with its first
    // mark, a test when it is handed in.
    const some = kept && (kept.attempt.commands.length > 0 || (kept.checked ?? []).length > 0);
    if (kept && !this.test && (some || kept.step !== this.lesson.steps[0]?.id)) await this.#fetchGrade();
    const { test } = this;
    // A test asks from the checks.
    if (test) await this.whole();
    const given = this.lesson.given && (await import('./given.ts'));
    const input: LessonInput = { ...(kept ?? { attempt: await this.#fresh(given?.givenOn) }), test };
    const { commands } = input.attempt;
    // What is given is replayed, and not done again by hand.
    const own = (await given?.ownOf(this.lesson, commands)) ?? commands;
    await fetchFor(toolsNeeded(this.lesson, own, input.step));
    this.#actor = createActor(lessonMachine(this.lesson, this.#mark), { input });
    this.#actor.subscribe((snapshot) => {
      this.snapshot = snapshot;
      this.#keep(snapshot);
    });
    this.#actor.start();
    this.snapshot = this.#actor.getSnapshot();
    this.#record.opened(this.snapshot);
    // A link may lead to a step; one that cannot be gone to yet is not gone to.
    const [, again, step = ''] = /^#(again=)?(.*)$/.exec(location.hash) ?? [];
    if (step === '' || this.test) return;
    this.send({ type: 'step.go', step });
    if (again) this.anew = step;
  }

  /** An attempt with nothing done in it but what is given. Rejects where what works that cannot be fetched. */
  async #fresh(givenOn?: GivenOn): Promise<Attempt> {
    const block = blockOf(this.lesson);
    const fabric = this.lesson.fabrics[0] ?? 'knit';
    const commands = (await givenOn?.(block, await this.whole(), fabric)) ?? [];
    const lesson = { id: this.lesson.id, content: this.lesson.content };
    return { format: 'pin-and-pivot/recipe', version: 1, block, fabric, seed: 0, lesson, commands };
  }

  stop(): void {
    this.#actor?.stop();
  }

  /** Sends at once, unless the event goes on to a step whose tools are still to be fetched. */
  send(event: LessonEvent): void {
    this.#record.sees(event, this.snapshot);
    void this.#give(event);
  }

  async #give(event: LessonEvent): Promise<void> {
    this.unfetched = undefined;
    const tools = event.type === 'step.next' || event.type === 'step.leaveFlagged' ? this.#nextTools() : [];
    if (!areFetched(tools)) {
      try {
        await fetchFor(tools);
      } catch {
        this.waits(UNFETCHED, () => this.#give(event));
        return;
      }
    }
    this.#actor?.send(event);
  }
  /** Says that something could not be fetched; `again` tries once more. */
  waits(said: string, again: () => unknown): void {
    this.unfetched = { said, again };
    announce(said);
  }

  #nextTools(): readonly CommandName[] {
    return toolsAfter(this.lesson, this.snapshot?.context.step);
  }

  /** Runs `open`; a mark that is asked for meanwhile is of what comes to lie on the table. */
  whileOpening(open: () => Promise<void>): Promise<void> {
    const opening = open();
    this.#opening = opening.catch(() => {});
    return opening;
  }

  /** Whether what marks is there; where it does not come that is told, and `again` tries once more. */
  async #canMark(again: () => unknown): Promise<boolean> {
    try {
      await this.#fetchGrade();
      return true;
    } catch {
      this.waits(MARK_UNFETCHED, again);
      return false;
    }
  }

  /** Marks the step as it stands; with `leave` it is left after that, flagged. Gives whether it could; if not, `again` is what tries again. */
  async mark(leave = false, again: () => unknown = () => this.mark(leave)): Promise<boolean> {
    await this.#opening;
    const [can] = await Promise.all([this.#canMark(again), this.#record.ready()]);
    if (!can) return false;
    // While the mark is read; when it cannot be had now, it is asked for again on going on.
    fetchFor(this.#nextTools()).catch(() => {});
    const step = this.snapshot?.context.step ?? '';
    this.send({ type: 'step.check' });
    this.#record.marked(this.snapshot, step);
    if (leave) this.send({ type: 'step.leaveFlagged' });
    return true;
  }

  /** Hands a test in: all steps are marked. Gives whether every one is accepted; undefined when it cannot be marked now; `again` is what tries again. */
  async handIn(again: () => unknown): Promise<boolean | undefined> {
    if (!(await this.#canMark(again))) return undefined;
    this.send({ type: 'test.handIn' });
    for (const { id } of this.lesson.steps) this.#record.marked(this.snapshot, id);
    return this.allAccepted;
  }

  /** Comes when all that was marked and shown so far is written down. Never rejects. */
  get written(): Promise<unknown> {
    return this.#record.written;
  }

  /** Whether all that was done in a step came from a file. */
  readonly given = (commands: readonly Command[]): boolean => this.#record.given(commands);

  get allAccepted(): boolean {
    const marks = this.snapshot?.context.marks;
    return this.lesson.steps.every(({ id }) => marks?.[id]?.verdict === 'accepted');
  }

  readonly #mark: Grade<StepToWork> = (step, context) => {
    if (!this.#grade) throw new Error('a mark was asked for before the checks were fetched');
    return this.#grade(this.ruleOf(step), context);
  };

  async #fetchGrade(): Promise<void> {
    const [{ gradeStep }] = await Promise.all([import('../grading/grade.ts'), this.whole()]);
    this.#grade = gradeStep;
  }

  /** Lays an attempt that was opened on the table. Rejects where what it needs cannot be fetched. */
  async lay(attempt: Attempt): Promise<void> {
    this.problems = [];
    await Promise.all([this.#fetchGrade(), fetchFor(toolsNeeded(this.lesson, attempt.commands))]);
    this.send({ type: 'attempt.open', attempt });
    this.#record.opened(this.snapshot, true);
    announce('The attempt is open.');
  }

  #keep(snapshot: LessonSnapshot): void {
    const settled = snapshot.matches({ working: 'marked' }) || snapshot.matches('finished');
    if (!this.#done && !this.test && settled && this.allAccepted) {
      this.#done = true;
      void import('../progress/note.ts').then(({ noteDone }) => noteDone(this.lesson));
    }
    if (!this.#kept.isNew(snapshot)) return;
    const kept = keptOf(snapshot.context);
    const handedIn = snapshot.matches('handedIn');
    // What was handed in is over: the next test begins on an empty table, `testOf` says on which figure.
    const over = handedIn && { attempt: { ...kept.attempt, commands: [] }, step: '' };
    void this.#store?.save(this.#key, { ...kept, ...over });
  }
}
