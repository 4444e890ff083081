import { createActor } from 'xstate';
import { ALL_TOOLS, BENCH, benchLesson, fromBench, toBench } from '../../lessons/bench.ts';
import { lessonMachine, type LessonActor, type LessonSnapshot } from '../../machines/lesson.ts';
import { attemptOf, type LessonEvent } from '../../machines/lesson-context.ts';
import type { Notice } from '../../progress/store.ts';
import type { KeptWork } from '../../progress/works.ts';
import type { WorksStore } from '../../progress/works-store.ts';
import type { Measures } from '../../pattern/block.ts';
import type { Problem } from '../../recipe/problem.ts';
import type { BlockChoice, Recipe } from '../../recipe/types.ts';
import { fetchFor } from '../../table/phases/index.ts';

/** Nothing is marked on the bench; its one step cannot be checked. */
const noMark = (): never => {
  throw new Error('nothing is marked on the bench');
};

/** The free bench: the work on the table, run by the lesson's machine, and the works that are kept. */
export class BenchSession {
  snapshot = $state.raw<LessonSnapshot>();
  /** What storage had to say, until the learner puts it away. */
  notice = $state.raw<Notice>();
  /** Why the last file was not opened. */
  problems = $state.raw<readonly Problem[]>([]);
  works = $state.raw<readonly KeptWork[]>([]);
  /** Id and name of the work on the table. */
  id = $state('');
  name = $state('');
  /** The last own measures that the work on the table lay on; they are kept with the work, and in no file of it that lies on a figure. */
  own = $state.raw<Measures>();

  #actor: LessonActor | undefined;
  #store: WorksStore | undefined;
  /** What of the work on the table is kept: as long as that is on the table, nothing needs to be written. */
  #kept: readonly unknown[] = [];

  /** Reads what is kept; the work that the address names goes onto the table. */
  async start(): Promise<void> {
    const [{ worksStore }, { indexedDbWorks }] = await Promise.all([
      import('../../progress/works-store.ts'),
      import('../../progress/works-db.ts'),
    ]);
    this.#store = worksStore(indexedDbWorks, (notice) => (this.notice = notice));
    await this.list();
    await this.#atAddress();
  }

  async #atAddress(): Promise<void> {
    const work = this.works.find(({ id, binned }) => !binned && `#${id}` === location.hash);
    if (work) await this.take(work);
  }

  stop(): void {
    this.#actor?.stop();
  }

  async list(): Promise<void> {
    this.works = (await this.#store?.all()) ?? [];
  }

  /** Lays a kept work on the table. */
  take({ id, name, recipe, own }: KeptWork): Promise<void> {
    return this.#lay(id, name, recipe, true, own);
  }

  /** Begins a new work; it is kept from its first command on, or once it has a name; measures that were typed are kept at once. */
  begin(recipe: Recipe, name = '', own?: Measures): Promise<void> {
    const untouched = name === '' && recipe.commands.length === 0 && 'figure' in recipe.block;
    return this.#lay(crypto.randomUUID(), name, recipe, untouched, own);
  }

  async #lay(id: string, name: string, recipe: Recipe, kept: boolean, own?: Measures): Promise<void> {
    // Any tool may be taken on the bench, and any block may lie on it.
    await Promise.all([fetchFor(ALL_TOOLS), import('../../recipe/start.ts')]);
    const attempt = toBench(recipe);
    this.#actor?.stop();
    const actor = createActor(lessonMachine(benchLesson, noMark), {
      input: { attempt, step: BENCH, demonstrationSeen: true },
    });
    this.#actor = actor;
    this.id = id;
    this.name = name;
    this.own = 'measures' in recipe.block ? recipe.block.measures : own;
    actor.start();
    this.snapshot = actor.getSnapshot();
    this.#kept = kept ? this.#now() : [];
    this.#keep();
    actor.subscribe((snapshot) => {
      this.snapshot = snapshot;
      this.#keep();
    });
    this.#nameAddress();
  }

  /** Puts the table away; the work stays kept. */
  async leave(): Promise<void> {
    this.#actor?.stop();
    this.#actor = undefined;
    this.snapshot = undefined;
    history.replaceState(history.state, '', location.pathname);
    await this.list();
  }

  send(event: LessonEvent): void {
    this.#actor?.send(event);
  }

  rename(name: string): void {
    this.name = name;
    this.#keep();
  }

  /** Goes on with a copy under a name of its own; the work itself stays as it is. */
  async copy(name: string): Promise<void> {
    const recipe = this.recipe;
    if (recipe) await this.begin(recipe, name, this.own);
  }

  /** The same commands on another body; what has no footing there stays listed. */
  async onto(block: BlockChoice): Promise<void> {
    const recipe = this.recipe;
    if (!recipe) return;
    if ('measures' in block) this.own = block.measures;
    this.send({ type: 'attempt.open', attempt: toBench({ ...recipe, block }) });
  }

  /** What lies on the table, as a recipe of its own. */
  get recipe(): Recipe | undefined {
    return this.snapshot && fromBench(attemptOf(this.snapshot.context));
  }

  async text(): Promise<string> {
    const { toText } = await import('../../recipe/save.ts');
    return this.recipe ? toText(this.recipe) : '';
  }

  /** Opens a file's text as a new work; one that is refused changes nothing. */
  async open(text: string, name: string): Promise<boolean> {
    const { parseRecipe } = await import('../../recipe/parse.ts');
    const parsed = parseRecipe(text);
    this.problems = 'problems' in parsed ? parsed.problems : [];
    if ('problems' in parsed) return false;
    await this.begin(parsed.ok, name);
    return true;
  }

  /** Changes what is kept of a work that need not lie on the table. */
  async change(work: KeptWork, to: Partial<Pick<KeptWork, 'name' | 'binned'>>): Promise<void> {
    await this.#store?.keep({ ...work, ...to });
    await this.list();
  }

  /** Takes a work away for good. */
  async remove({ id }: KeptWork): Promise<void> {
    await this.#store?.remove(id);
    await this.list();
  }

  #now(): readonly unknown[] {
    const { history: done, base } = this.snapshot!.context;
    return [done.commands, base, this.name];
  }

  #keep(): void {
    const { recipe, id, name, own } = this;
    if (!recipe) return;
    const now = this.#now();
    if (now.every((part, i) => part === this.#kept[i])) return;
    this.#kept = now;
    const before = own && 'figure' in recipe.block && { own };
    void this.#store?.keep({ id, name, at: Date.now(), binned: false, recipe, ...before });
  }

  /** So that a reload finds the work again. */
  #nameAddress(): void {
    history.replaceState(history.state, '', `#${this.id}`);
  }
}
