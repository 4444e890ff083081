import { createActor } from 'xstate';
import { applyTo, invert } from '../../../src/lib/geometry/isometry.ts';
import { add, distance, norm, scale, sub } from '../../../src/lib/geometry/point.ts';
import type { Point } from '../../../src/lib/geometry/types.ts';
import { isBack, pieceSet, type Options } from '../../../src/lib/machines/scene.ts';
import type { ToolTarget } from '../../../src/lib/machines/tool-spec.ts';
import { cameTo, targetsOf } from '../../../src/lib/machines/holding.ts';
import { DRAG_THRESHOLD, TOUCH_THRESHOLD, type ToolActor } from '../../../src/lib/machines/tool.ts';
import { TOOLS } from '../../../src/lib/machines/tools/index.ts';
import { machineOf } from '../../../src/lib/machines/tools/known.ts';
import type { Piece } from '../../../src/lib/pattern/types.ts';
import { apply } from '../../../src/lib/recipe/apply.ts';
import type { Command, CommandName, Fabric, Work } from '../../../src/lib/recipe/types.ts';
import { graspedAt, reachFor, snapReach } from '../../../src/lib/table/grasp.ts';
import { Track, type Place } from '../../../src/lib/table/steady.ts';
import { layOut, placeOf, tableBox, type Layout } from '../../../src/lib/table/layout.ts';
import { between, KNOWS, wayFor } from './motion.ts';
import { Chance, CORRECTIONS, ENLARGED, PATIENCE, SEES, Tip, type Device, type Sample } from './noise.ts';

const within = (pointer: string): number => (pointer === 'mouse' ? DRAG_THRESHOLD : TOUCH_THRESHOLD);

/** So large on the screen is what makes somebody content when they look at a thing from near, mm. */
const NEAR = 0.8;
/** The app's free room round the pieces, px. */
const ROOM = 40;

export interface Task {
  readonly work: Work;
  readonly fabric: Fabric;
  /** What has to be in sight while working, mm; undefined: all that lies on the table. */
  readonly field: number | undefined;
  /** Nearer than this to what is meant is near enough for the person, mm. */
  readonly content: number;
}

/** What is meant with a thing: to where, and how it is seen to be there. */
export interface Meant {
  readonly to: Point;
  /** A live measure tells it, else the eye alone does. */
  readonly read?: boolean;
  /** Only the direction from where it was pressed is meant. */
  readonly way?: boolean;
}

/** Somebody at the table with one device: the tools' own machines are driven by what its tip does. */
export class Person {
  readonly commands: Command[] = [];
  work: Work;
  readonly task: Task;
  readonly tip: Tip;
  /** px for each mm of the pattern. */
  k: number;
  #layout: Layout;
  #actor!: ToolActor;
  #tool!: CommandName;
  #track!: Track;

  constructor(task: Task, device: Device, seed: number) {
    this.task = task;
    this.work = task.work;
    this.tip = new Tip(device, new Chance(seed));
    this.#layout = this.#laid();
    this.k = this.#enlarged(task.field);
  }

  #enlarged(field = Infinity): number {
    const { window } = this.tip.device;
    const box = tableBox(this.#fronts(), this.#layout)!;
    const room = Math.min(ROOM, window.width / 12);
    const fitted = Math.min(
      (window.width - 2 * room) / (box.maxX - box.minX),
      (window.height - 2 * room - 34) / (box.maxY - box.minY),
    );
    const near = (ENLARGED.fills * Math.min(window.width, window.height)) / field;
    return Math.min(ENLARGED.most * fitted, Math.max(fitted, near));
  }
  /** Does something, and looks at the table from where one looked before. */
  #thenBack<T>(work: () => T): T {
    const { k } = this;
    try {
      return work();
    } finally {
      this.#lookAt(k);
    }
  }
  /** Looks nearer for another try, at a way of so many px that has to stay in sight. */
  #nearer(way: number): void {
    const { window, perMm } = this.tip.device;
    const whole = (ENLARGED.fills * Math.min(window.width, window.height) * this.k) / Math.max(way, 1);
    const wanted = (NEAR * perMm) / this.task.content;
    this.#lookAt(Math.max(this.k, Math.min(wanted, whole, ENLARGED.most * this.#enlarged())));
  }
  #lookAt(k: number): void {
    this.k = k;
    this.#actor.send({ type: 'reach.set', reach: this.#reach });
  }
  get #reach(): number {
    return snapReach(this.k, TOOLS[this.#tool].trail);
  }

  get pointer(): string {
    const { name } = this.tip.device;
    return name === 'finger' ? 'touch' : name;
  }
  get context() {
    return this.#actor.getSnapshot().context;
  }
  get state(): string {
    return String(this.#actor.getSnapshot().value);
  }

  take(tool: CommandName, options: Options = {}): this {
    this.#actor?.stop();
    this.#tool = tool;
    const input = {
      work: this.work,
      fabric: this.task.fabric,
      options,
      reach: snapReach(this.k, TOOLS[tool].trail),
    };
    const actor = createActor(machineOf(TOOLS[tool]), { input });
    actor.on('command', ({ command }) => this.give(command));
    this.#actor = actor.start();
    return this;
  }
  give(command: Command): boolean {
    const applied = apply(this.work, command);
    if ('refused' in applied) return false;
    this.commands.push(command);
    this.work = applied.work;
    this.#layout = this.#laid();
    this.#actor?.send({ type: 'scene.set', work: this.work, fabric: this.task.fabric });
    return true;
  }
  undo(to: number): void {
    const kept = this.commands.slice(0, to);
    this.commands.length = 0;
    this.work = this.task.work;
    for (const command of kept) this.give(command);
    this.#actor.send({ type: 'scene.set', work: this.work, fabric: this.task.fabric });
  }
  act(id: string): void {
    this.#actor.send({ type: 'act.do', act: id });
  }
  option(id: string, value: string | number): void {
    this.#actor.send({ type: 'option.set', id, value });
  }

  /** The fronts: the back stays in the drawer, or out of sight. */
  #fronts(): readonly Piece[] {
    return pieceSet(this.work, this.task.fabric).filter((piece) => !isBack(piece));
  }
  #laid(): Layout {
    return layOut(this.#fronts(), this.work.placed, 1);
  }
  #px(p: Point, piece: string): Point {
    return scale(applyTo(placeOf(this.#layout, piece), p), this.k);
  }
  #mm(p: Point, piece: string): Point {
    return applyTo(invert(placeOf(this.#layout, piece)), scale(p, 1 / this.k));
  }
  get #handles(): { target: ToolTarget; at: Point }[] {
    return targetsOf(TOOLS[this.#tool], this.context.scene).map((target) => ({
      target,
      at: this.#px(target.point, target.piece),
    }));
  }
  target(id: string): ToolTarget | undefined {
    return targetsOf(TOOLS[this.#tool], this.context.scene).find((one) => one.id === id);
  }

  #down(at: Sample, target: string | undefined, piece: string): void {
    this.#track = new Track(this.pointer, at);
    if (target === undefined) this.#actor.send({ type: 'reach.set', reach: reachFor(this.pointer) / this.k });
    this.#actor.send({
      type: 'pointer.down',
      point: this.#mm(at, piece),
      screen: at,
      over: { piece },
      touch: this.pointer !== 'mouse',
      ...(target === undefined ? {} : { target }),
    });
    this.#actor.send({ type: 'reach.set', reach: this.#reach });
  }
  #move(at: Sample, piece: string): void {
    this.#track.add(at);
    this.#go(this.#track.last, piece);
  }
  #go(at: Place, piece: string, via: readonly Sample[] = [], slow = this.#track.slow(at.t)): void {
    this.#actor.send({
      type: 'pointer.move',
      point: this.#mm(at.led, piece),
      screen: at,
      hand: this.#mm(at, piece),
      via: via.map((one) => this.#mm(one, piece)),
      slow,
    });
  }
  /** Lifts the tip from where it rests. */
  #up(piece: string): void {
    const samples = this.tip.lift();
    const places = samples.map((one) => (this.#track.add(one), this.#track.last));
    const { t } = samples.at(-1)!;
    // All of them have reached the machine; only where it came to makes a difference.
    const farthest = places.reduce((a, b) => (distance(b, samples[0]!) > distance(a, samples[0]!) ? b : a));
    if (this.state === 'pointing') this.#go(farthest, piece);
    const { last } = this.#track;
    const there = cameTo(TOOLS[this.#tool], this.context, this.#mm(last, piece));
    this.#go(there ? last : this.#track.rest(t), piece, [], true);
    this.#actor.send({ type: 'pointer.up', stayed: this.#track.stayed(t, within(this.pointer)) });
  }

  /** How far what is held lies from where it is meant to be, as it looks, px. */
  #missing({ to, read }: Meant, at: Point, piece: string, under = true): Point {
    const goal = this.#px(to, piece);
    const seen = read
      ? this.tip.chance.around(this.#px(at, piece), SEES.reading * this.k)
      : this.tip.sees(this.#px(at, piece), under);
    return sub(goal, seen);
  }
  /** Whether it looks right: nobody goes on correcting what is no more than they can see. */
  #content(off: Point, read = false, under = true): boolean {
    const { perMm, hides } = this.tip.device;
    const sight = read ? SEES.reading * this.k : perMm * (under && hides > 0 ? SEES.hidden : SEES.free);
    return Math.sqrt(off.x * off.x + off.y * off.y) <= Math.max(this.task.content * this.k, 2 * sight);
  }

  /**
   * Moves what is held by so much, px, in one movement (minimum jerk: Flash and Hogan 1985), with the eye on it. How far the hand has to go
   * is known from use where they do not go alike, to about a fifth.
   */
  #slide(by: Point, piece: string): void {
    const { hz } = this.tip.device;
    const way = wayFor(norm(by), this.pointer, hz);
    const meant = scale(by, way > 1.01 ? way * Math.max(0.3, this.tip.chance.normal(KNOWS, 1)) : 1);
    const from = this.tip.now;
    const to = this.tip.slide(meant);
    for (const one of between(from, to, hz)) this.#track.add(one);
    this.#move(to, piece);
  }

  /** Slides what is held towards where it is meant to be, until that looks right. */
  #correct(meant: Meant, from: Point, piece: string): void {
    for (let i = 0; i < CORRECTIONS; i++) {
      const off = this.#missing(meant, this.context.grip?.at ?? from, piece);
      if (i > 0 && this.#content(off, meant.read)) return;
      this.#slide(off, piece);
    }
  }

  /** One pull of a handle; false when something else, or nothing, was taken hold of. */
  #pull(id: string, meant: Meant): boolean {
    const own = this.target(id);
    if (!own) return false;
    const pressed = this.tip.press(this.#px(own.point, own.piece));
    const taken = graspedAt(this.#handles, pressed, this.pointer)?.target;
    // Beside what stands for a whole line, it is the line that is pressed, and pulled from there.
    if (taken?.id !== id && (taken || !own.anywhere)) return false;
    this.#down(pressed, taken?.id, own.piece);
    if (this.state === 'idle') return false;
    this.#correct(meant, own.point, own.piece);
    this.#up(own.piece);
    if (this.state !== 'carrying') return true;
    // It was picked up by what was meant as a short pull: it is put down where it was meant to go.
    this.#down(this.tip.press(this.#px(meant.to, own.piece)), undefined, own.piece);
    this.#correct(meant, own.point, own.piece);
    this.#up(own.piece);
    return true;
  }

  /** Brings a handle to where it is meant to be; `then`: its name afterwards. As often as patience lasts. */
  bring(id: string, meant: Meant, then = id): void {
    this.#thenBack(() => this.#bring(id, meant, then));
  }
  #bring(id: string, meant: Meant, then: string): void {
    let name = id;
    for (let tries = 0; tries < PATIENCE; tries++) {
      // What did not come right at once is looked at from nearer.
      const own = tries > 0 ? this.target(name) : undefined;
      if (own) this.#nearer(distance(this.#px(own.point, own.piece), this.#px(meant.to, own.piece)));
      if (!this.#pull(name, meant)) continue;
      if (this.target(then)) name = then;
      const now = this.target(name);
      if (!now || this.#content(this.#missing(meant, now.point, now.piece, false), meant.read, false)) return;
    }
  }

  /** Pulls something new from a handle, until it is there. */
  pullNew(id: string, meant: Meant, there: () => boolean): void {
    this.#thenBack(() => {
      for (let tries = 0; tries < PATIENCE && !there(); tries++) {
        const own = this.target(id);
        if (!own) return;
        if (tries > 0) this.#nearer(distance(this.#px(own.point, own.piece), this.#px(meant.to, own.piece)));
        this.#pull(id, meant);
      }
    });
  }

  /** Chooses a handle; what else was chosen by mistake is taken back. */
  tap(id: string): void {
    this.#thenBack(() => this.#tap(id));
  }
  #tap(id: string): void {
    for (let tries = 0; tries < PATIENCE; tries++) {
      if (tries > 0) this.#nearer(0);
      const own = this.target(id);
      if (!own) return;
      const count = this.commands.length;
      const [down, up] = this.tip.tap(this.#px(own.point, own.piece)) as [Sample, Sample];
      const taken = graspedAt(this.#handles, down, this.pointer)?.target;
      this.#down(down, taken?.id, own.piece);
      this.#move(up, own.piece);
      this.#actor.send({ type: 'pointer.up' });
      if (taken?.id === id && this.state === 'idle') return;
      this.#actor.send({ type: 'pointer.cancel' });
      if (this.commands.length > count && tries < PATIENCE - 1) this.undo(count);
    }
  }

  /** Presses on the paper itself; true when that did something. */
  tapAt(place: Point, piece: string, done: () => boolean): boolean {
    return this.#thenBack(() => this.#tapAt(place, piece, done));
  }
  #tapAt(place: Point, piece: string, done: () => boolean): boolean {
    for (let tries = 0; tries < PATIENCE; tries++) {
      if (tries > 0) this.#nearer(0);
      const [down, up] = this.tip.tap(this.#px(place, piece)) as [Sample, Sample];
      this.#down(down, graspedAt(this.#handles, down, this.pointer)?.target.id, piece);
      this.#move(up, piece);
      this.#actor.send({ type: 'pointer.up' });
      if (done()) return true;
      this.#actor.send({ type: 'pointer.cancel' });
    }
    return false;
  }

  /** Presses on the paper at a place and pulls from there. */
  pullFrom(place: Point, piece: string, meant: Meant, good = () => true): boolean {
    return this.#thenBack(() => this.#pullFrom(place, piece, meant, good));
  }
  #pullFrom(place: Point, piece: string, meant: Meant, good: () => boolean): boolean {
    for (let tries = 0; tries < PATIENCE; tries++) {
      if (tries > 0) this.#nearer(distance(this.#px(place, piece), this.#px(meant.to, piece)));
      const count = this.commands.length;
      const pressed = this.tip.press(this.#px(place, piece));
      this.#down(pressed, graspedAt(this.#handles, pressed, this.pointer)?.target.id, piece);
      if (this.state === 'idle') continue;
      const from = meant.way ? sub(this.#mm(pressed, piece), place) : { x: 0, y: 0 };
      this.#correct({ ...meant, to: add(meant.to, from) }, place, piece);
      this.#up(piece);
      if (this.commands.length > count && good()) return true;
      this.#actor.send({ type: 'pointer.cancel' });
      if (this.commands.length > count && tries < PATIENCE - 1) this.undo(count);
    }
    return false;
  }

  /** Draws a line in one go. */
  draw(along: (part: number) => Point, piece: string): void {
    const samples = this.tip.draw((part) => this.#px(along(part), piece));
    this.#down(samples[0]!, undefined, piece);
    const rest = [...samples.slice(1), ...this.tip.lift()];
    const last = rest.at(-1)!;
    this.#go({ ...last, led: last }, piece, rest.slice(0, -1));
    this.#actor.send({ type: 'pointer.up' });
  }

  /** How a length of the pattern reads, mm. */
  reads(value: number): number {
    return value + this.tip.chance.normal(SEES.reading);
  }
  near(a: Point, b: Point): number {
    return distance(a, b);
  }
}
