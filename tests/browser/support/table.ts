import { expect, type Locator, type Page } from '@playwright/test';
import { mouseHand, type Hand, type Point } from './hand.ts';

export { touchHand } from './hand.ts';
export type { Hand, Point } from './hand.ts';

/** A handle by its id, a place of a piece in mm, or whatever is found on the page when it is needed. */
export type Goal = string | { readonly mm: Point; readonly piece?: string } | (() => Promise<Point>);

export type AttemptFile = string | { name: string; mimeType: string; buffer: Buffer };

/** Room kept free at the edges of the table, and for its zoom buttons, px. */
const EDGE = 26;
const BUTTONS = 64;

/** The lesson page as a person sees it: the table with its handles, and the panel beside it. */
export class Desk {
  readonly page: Page;
  readonly hand: Hand;
  /** What the page complained about; a test ends with this empty. */
  readonly errors: string[] = [];

  constructor(page: Page, hand: Hand = mouseHand(page)) {
    this.page = page;
    this.hand = hand;
    page.on('pageerror', (error) => this.errors.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') this.errors.push(message.text());
    });
  }

  /** With a folder named in PIN_SHOTS keeps a picture of the page there, to be looked at. */
  async picture(name: string): Promise<void> {
    const folder = process.env['PIN_SHOTS'];
    if (folder) await this.page.screenshot({ path: `${folder}/${name}.png` });
  }

  async open(lesson = 'slanted-seam'): Promise<void> {
    await this.page.goto(`/lesson/${lesson}/`);
    await expect(this.page.getByRole('heading', { level: 1 })).toBeVisible();
  }

  /** A button of the panel, the strip or the header by its words. */
  button(name: string | RegExp): Locator {
    return this.page.getByRole('button', { name, exact: typeof name === 'string' });
  }
  async push(name: string | RegExp): Promise<void> {
    await this.hand.push(this.button(name));
  }
  /** Takes a tool in hand. */
  async take(tool: string): Promise<void> {
    await this.hand.push(this.page.locator('.tools label', { hasText: tool }).first());
    await expect(this.page.getByRole('radio', { name: tool, exact: true })).toBeChecked();
  }
  /** Opens a folded part of the panel; one that is open stays so from step to step. */
  async unfold(title: string): Promise<void> {
    const part = this.page.locator('details', { has: this.page.locator('summary', { hasText: title }) });
    if ((await part.getAttribute('open')) === null) await this.hand.push(part.locator('summary'));
  }
  /** A choice of the tool's strip. */
  async choose(option: string, value: string): Promise<void> {
    await this.page.locator(`.strip select[data-option="${option}"]`).selectOption(value);
  }
  /** A typed number of the tool's strip. */
  async type(option: string, value: string): Promise<void> {
    const box = this.page.locator(`.strip input[data-option="${option}"]`);
    await box.fill(value);
    await box.press('Enter');
    await box.blur();
  }

  get svg(): Locator {
    return this.page.locator('.desk > svg');
  }
  handle(id: string): Locator {
    return this.page.locator(`[data-target="${id}"]`);
  }
  handles(): Promise<string[]> {
    return this.page
      .locator('[data-target]')
      .evaluateAll((all) => all.map((one) => one.getAttribute('data-target') ?? ''));
  }
  /** What can be hit of each handle, px. */
  hits(): Promise<{ id: string; x: number; y: number; width: number; height: number }[]> {
    return this.page.locator('[data-target]').evaluateAll((all) =>
      all.map((one) => {
        const { x, y, width, height } = one.querySelector('.hit')!.getBoundingClientRect();
        return { id: one.getAttribute('data-target') ?? '', x, y, width, height };
      }),
    );
  }
  /** The middle of a handle on the page. */
  async at(id: string): Promise<Point> {
    const box = await this.handle(id).locator('.hit').boundingBox();
    if (!box) throw new Error(`The handle ${id} is not on the table.`);
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }
  /** Where a place of the pattern, in mm of its piece, lies on the page. */
  place(mm: Point, piece = 'front'): Promise<Point> {
    return this.page.locator(`g[data-piece="${piece}"]`).evaluate((group: SVGGElement, { x, y }) => {
      const m = group.getScreenCTM()!;
      return { x: m.a * x + m.c * y + m.e, y: m.b * x + m.d * y + m.f };
    }, mm);
  }
  /** A drawn line, to be looked at: its length and points along it, in mm of its piece. */
  async drawn(key: string, piece = 'front'): Promise<DrawnLine> {
    const path = this.page.locator(`g[data-piece="${piece}"] path[data-line="${key}"]`);
    const points = await path.evaluate((one: SVGPathElement) => {
      const whole = one.getTotalLength();
      const count = Math.ceil(whole / 0.5);
      return Array.from({ length: count + 1 }, (_, i) => {
        const { x, y } = one.getPointAtLength((whole * i) / count);
        return { x, y };
      });
    });
    return new DrawnLine(points);
  }
  /** The middle of a mark that is drawn, such as the cross at a bust point, in mm of its piece. */
  mark(key: string, piece = 'front'): Promise<Point> {
    return (
      this.page
        .locator(`g[data-piece="${piece}"] path[data-line="${key}"]`)
        // A part that was cut is drawn in several groups, each with the mark.
        .first()
        .evaluate((one: SVGPathElement) => {
          const { x, y, width, height } = one.getBBox();
          return { x: x + width / 2, y: y + height / 2 };
        })
    );
  }

  /** Where a goal lies on the page now. */
  find(goal: Goal): Promise<Point> {
    if (typeof goal === 'string') return this.at(goal);
    return typeof goal === 'function' ? goal() : this.place(goal.mm, goal.piece);
  }
  /** Presses and lifts, on a handle or at a place of the paper. */
  async tap(goal: Goal): Promise<void> {
    await this.bring([goal]);
    await this.hand.press(await this.find(goal));
    await this.hand.lift();
  }
  /** Presses at the first goal, goes through the others, lifts at the last. */
  async drag(from: Goal, ...way: readonly Goal[]): Promise<void> {
    await this.dragTo(from, ...way);
    await this.hand.lift();
  }
  /** The same without lifting, to look at what is held. */
  async dragTo(from: Goal, ...way: readonly Goal[]): Promise<void> {
    await this.bring([from, ...way]);
    const points: Point[] = [];
    for (const goal of way) points.push(await this.find(goal));
    await this.hand.press(await this.find(from));
    for (const point of points) await this.hand.move(point);
  }

  /** px of the page for one mm of the paper. */
  scale(): Promise<number> {
    const piece = this.page.locator('g[data-piece]').first();
    return piece.evaluate((group: SVGGElement) => group.getScreenCTM()!.a);
  }
  /** Brings goals into sight, and near enough for the hand: as a person would, who shows all first when something lies outside. */
  async bring(goals: readonly Goal[]): Promise<void> {
    const { x, y, width, height } = (await this.svg.boundingBox())!;
    const room = { x: x + EDGE, y: y + EDGE, width: width - 2 * EDGE, height: height - EDGE - BUTTONS };
    const inRoom = (p: Point): boolean =>
      p.x >= room.x && p.x <= room.x + room.width && p.y >= room.y && p.y <= room.y + room.height;
    const find = (): Promise<Point[]> => Promise.all(goals.map((goal) => this.find(goal)));
    let points = await find();
    if (!points.every(inRoom)) {
      await this.push('Show all');
      points = await find();
    }
    const now = await this.scale();
    const span = (of: 'x' | 'y'): { middle: number; wide: number } => {
      const all = points.map((point) => point[of]);
      return { middle: (Math.min(...all) + Math.max(...all)) / 2, wide: Math.max(...all) - Math.min(...all) };
    };
    const [across, down] = [span('x'), span('y')];
    const fits = Math.min(room.width / Math.max(1, across.wide), room.height / Math.max(1, down.wide));
    const factor = Math.min(this.hand.near / now, fits);
    if (factor < 1.2) return;
    const centre = { x: room.x + room.width / 2, y: room.y + room.height / 2 };
    await this.hand.zoom({ x: across.middle, y: down.middle }, centre, factor, room);
    await expect.poll(async () => (await this.scale()) / now).toBeGreaterThan(0.9 * factor);
  }

  /** What stands written on the table. */
  async written(): Promise<string[]> {
    return this.svg.locator('.label text').allTextContents();
  }
  /** Something of the menu at the top. */
  async menu(name: string): Promise<void> {
    await this.hand.push(this.page.locator('header summary'));
    await this.push(name);
  }
  /** Picks a file in the file chooser; it may be refused. */
  async offer(file: AttemptFile): Promise<void> {
    const chooser = this.page.waitForEvent('filechooser');
    await this.menu('Open an attempt');
    await (await chooser).setFiles(file);
  }
  /** Opens an attempt file, and waits until that is said. */
  async openAttempt(file: AttemptFile): Promise<void> {
    const said = this.page.locator('[data-announcer]');
    const before = await said.textContent();
    await this.offer(file);
    await expect.poll(() => said.textContent(), { intervals: [20, 50] }).not.toBe(before);
    await expect(said).toContainText('The attempt is open.');
  }
  /** The text of what was done counts the commands of the step: one for each gesture. */
  async hasDone(count: number): Promise<void> {
    await expect(this.page.getByText(/^What was done in this step/)).toHaveText(
      `What was done in this step (${count})`,
    );
  }
  async check(): Promise<string | null> {
    await this.push('Check');
    const mark = this.page.getByRole('region', { name: 'Mark of this step' });
    await expect(mark).not.toContainText('The table changed since');
    return mark.getAttribute('data-verdict');
  }
  /** Checks, expects the step to be accepted, and goes on. */
  async accepted(next: 'Next step' | 'Finish' = 'Next step'): Promise<void> {
    const verdict = await this.check();
    if (verdict !== 'accepted') {
      const text = await this.page.locator('.mark li:not(.right)').allInnerTexts();
      throw new Error(`The step was ${verdict}: ${text.join(' | ')}`);
    }
    await this.push(next);
  }
  /** A finding of the mark by its code, in the state that it has. */
  finding(code: string, state: 'wrong' | 'missing' | 'note' | 'right' = 'wrong'): Locator {
    return this.page.locator(`.mark li.${state}[data-code="${code}"]`);
  }
  /** A step in the rail. */
  step(id: string): Locator {
    return this.page.locator(`button[data-step="${id}"]`);
  }
  /** Comes to a step of an attempt just opened: it opens there, or with `start` at the step before, which is accepted then. */
  async goTo(id: string, start: boolean): Promise<void> {
    const before = this.page.locator('li', { has: this.step(id) }).locator('xpath=preceding-sibling::li[1]');
    const opens = start ? before.locator('button') : this.step(id);
    await expect(opens).toHaveAttribute('aria-current', 'step');
    if (start) await this.accepted();
  }
  async go(id: string): Promise<void> {
    await this.hand.push(this.step(id));
    await expect(this.step(id)).toHaveAttribute('aria-current', 'step');
  }
  /** Opens the attempt in which everything before a step is done, and goes on to that step. */
  async startAt(folder: string): Promise<void> {
    await this.open();
    await this.push('Start at once');
    await this.openAttempt(`lessons/slanted-seam/${folder}/attempts/start.attempt.json`);
    // It opens at the last step in which something was done.
    const before = Number(folder.slice(0, 2)) - 1;
    await expect(this.page.getByRole('heading', { level: 2 })).toContainText(`${before}. `);
    await this.accepted();
  }
  async onStep(title: string): Promise<void> {
    await expect(this.page.getByRole('heading', { level: 2 })).toHaveText(new RegExp(`^\\d+\\. ${title}$`));
  }
}

/** A line as points half a millimetre apart or less; lengths in mm along it. */
export class DrawnLine {
  readonly points: readonly Point[];
  readonly #at: readonly number[];

  constructor(points: readonly Point[]) {
    this.points = points;
    const at = [0];
    points.slice(1).forEach((p, i) => at.push(at[i]! + distance(points[i]!, p)));
    this.#at = at;
  }
  get length(): number {
    return this.#at.at(-1)!;
  }
  pointAt(along: number): Point {
    const i = this.#at.findIndex((at) => at >= along);
    return this.points[i < 0 ? this.points.length - 1 : i]!;
  }
  /** How far along it the place nearest to a point is, and how far off. */
  nearest(to: Point): { along: number; off: number; point: Point } {
    let best = 0;
    this.points.forEach((p, i) => {
      if (distance(p, to) < distance(this.points[best]!, to)) best = i;
    });
    const point = this.points[best]!;
    return { along: this.#at[best]!, off: distance(point, to), point };
  }
}

export const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
