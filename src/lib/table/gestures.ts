import { flushSync } from 'svelte';
import { distance } from '../geometry/point.ts';
import { applyTo, invert } from '../geometry/isometry.ts';
import type { Point } from '../geometry/types.ts';
import type { Over } from '../machines/tool-spec.ts';
import { DRAG_THRESHOLD, TOUCH_THRESHOLD } from '../machines/tool.ts';
import { TABLE } from '../strings/table.ts';
import type { Units } from '../strings/units.ts';
import { announce } from './announcer.ts';
import { graspedAt, reachFor, snapReach } from './grasp.ts';
import { placeOf } from './layout.ts';
import { spokenReadings } from './marks.ts';
import type { Picture } from './picture.svelte.ts';
import { stepOf, type ToolRunner } from './runner.svelte.ts';
import { Track, type Place } from './steady.ts';
import type { LabelledTarget } from './targets.ts';
import type { Viewport } from './viewport.svelte.ts';

/** A move that comes sooner than this after the last one, ms, belongs to the same picture. */
const SOON = 4;

/** Turns what pointer and keys do on the drawing into the events of the tool in hand. */
export class Gestures {
  readonly #svg: () => SVGSVGElement;
  readonly #picture: Picture;
  readonly #runner: ToolRunner;
  readonly #view: Viewport;
  readonly #units: () => Units;
  #last: PointerEvent | undefined;
  /** The places since the last one that was followed, of a tool that follows the whole way. */
  #via: PointerEvent[] = [];
  /** The way since the press. */
  #track: Track | undefined;
  #request = 0;
  /** When the move happened that was followed last, ms. */
  #followed = 0;
  #speaking: ReturnType<typeof setTimeout> | undefined;

  constructor(
    svg: () => SVGSVGElement,
    parts: { picture: Picture; runner: ToolRunner; view: Viewport },
    units: () => Units,
  ) {
    this.#svg = svg;
    this.#picture = parts.picture;
    this.#runner = parts.runner;
    this.#view = parts.view;
    this.#units = units;
  }

  /** Listens for moves on the drawing; gives what stops it. Straight, since a move goes to no one else. */
  attach(svg: SVGSVGElement): () => void {
    svg.addEventListener('pointermove', this.move);
    return () => svg.removeEventListener('pointermove', this.move);
  }

  #onSvg(event: PointerEvent): Point {
    const box = this.#svg().getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  }
  #inPiece(screen: Point, piece = this.#picture.grip?.piece ?? 'front'): Point {
    return applyTo(invert(placeOf(this.#picture.layout, piece)), this.#view.toTable(screen));
  }
  down = (event: PointerEvent): void => {
    if (!this.#picture.tool || event.button !== 0) return;
    // A second finger means to zoom.
    if (!event.isPrimary) return this.letGo();
    const touch = event.pointerType !== 'mouse';
    const screen = this.#onSvg(event);
    const target = graspedAt(this.#picture.handles, screen, event.pointerType)?.target;
    const over = under(event);
    const held = this.#runner.busy ? this.#picture.grip?.piece : undefined;
    const piece = target?.piece ?? held ?? over.piece ?? 'front';
    const point = this.#inPiece(screen, piece);
    const which = target ? { target: target.id } : {};
    this.#track = new Track(event.pointerType, { ...screen, t: event.timeStamp });
    const { k } = this.#view;
    const reach = (mm: number) => target || this.#runner.send({ type: 'reach.set', reach: mm });
    // A press beside all handles may be meant for a line or an edge: a finger comes down less near to it.
    reach(reachFor(event.pointerType) / k);
    this.#runner.send({ type: 'pointer.down', point, screen, over, touch, ...which });
    reach(snapReach(k, this.#runner.spec?.trail));
    if (!this.#runner.busy) return;
    this.#view.held = true;
    this.#via = [];
    this.#last = event;
    this.#svg().setPointerCapture(event.pointerId);
    // No mouse events besides, which would go through the whole page with every move; so the focus goes by hand too.
    event.preventDefault();
    if (target) this.focus(target.id);
    else this.#svg().focus({ preventScroll: true });
  };

  /** Browsers give moves in step with the pictures of the screen; one that comes sooner waits for the next picture. */
  move = (event: PointerEvent): void => {
    if (!this.#runner.busy) return;
    this.#last = event;
    if (this.#view.held) this.#track?.add({ ...this.#onSvg(event), t: event.timeStamp });
    // A quick hand comes through several places between two pictures.
    if (this.#runner.spec?.trail) this.#via.push(...(event.getCoalescedEvents?.() ?? []), event);
    if (this.#request) return;
    if (event.timeStamp - this.#followed >= SOON) this.#follow();
    else this.#request = requestAnimationFrame(this.#follow);
  };

  #follow = (): void => {
    this.#request = 0;
    if (!this.#last || !this.#runner.busy) return;
    this.#followed = this.#last.timeStamp;
    const { timeStamp: t } = this.#last;
    const screen = this.#onSvg(this.#last);
    this.#goTo({ ...screen, t, led: this.#fine?.last.led ?? screen });
  };

  /** The way of a hand that holds something, but for a tool that follows it all. */
  get #fine(): Track | undefined {
    return this.#view.held && !this.#runner.spec?.trail ? this.#track : undefined;
  }

  #goTo({ led, t, ...screen }: Place): void {
    const point = this.#inPiece(led);
    const hand = distance(led, screen) < 1 ? {} : { hand: this.#inPiece(screen) };
    const via = this.#via.map((event) => this.#inPiece(this.#onSvg(event)));
    this.#via = [];
    const slow = this.#view.held && this.#track?.slow(t) === true;
    // Drawn at once: nothing else can come in between.
    flushSync(() => this.#runner.send({ type: 'pointer.move', point, screen, ...hand, via, slow }));
  }

  up = ({ timeStamp: t, pointerType }: PointerEvent): void => {
    const track = this.#track;
    if (!this.#view.held || !track) return;
    if (this.#request) {
      cancelAnimationFrame(this.#request);
      this.#follow();
    }
    // What is held comes to lie where the hand rested: how it was lifted does not count, unless that took it to where it belongs.
    if (this.#fine && track.slipped(t) && !this.#runner.snapsAt(this.#inPiece(track.last)))
      this.#goTo({ ...track.rest(t), t });
    this.#view.held = false;
    const stayed = track.stayed(t, pointerType === 'mouse' ? DRAG_THRESHOLD : TOUCH_THRESHOLD);
    this.#runner.send({ type: 'pointer.up', stayed });
    this.#sayHeld();
  };

  letGo = (): void => {
    this.#view.held = false;
    if (!this.#runner.busy) return;
    this.#runner.send({ type: 'pointer.cancel' });
    announce(TABLE.letGo);
  };

  focus(id: string): void {
    this.#svg()
      .querySelector<SVGElement>(`[data-target="${CSS.escape(id)}"]`)
      ?.focus({ preventScroll: true });
  }

  #sayHeld(): void {
    const target = this.#picture.targets.find(({ id }) => id === this.#picture.grip?.target);
    if (this.#runner.busy && target) announce(TABLE.takenUp(target.label));
  }

  keyOnHandle = (event: KeyboardEvent, target: LabelledTarget): void => {
    const by = stepOf(event);
    if (by) this.nudge(target.id, by);
    else if (event.key === 'Enter' || event.key === ' ') this.choose(target.id);
    else if (event.key === 'Delete' || event.key === 'Backspace') this.remove(target.id);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  keyOnTable = (event: KeyboardEvent): void => {
    if (event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement) return;
    if (event.key === 'Escape' && this.#runner.busy) this.letGo();
    else if (event.key === '+' || event.key === '=') this.#view.zoomBy(1.4);
    else if (event.key === '-') this.#view.zoomBy(1 / 1.4);
    else if (event.key === '0') this.#view.fit(this.#picture.box);
    else return;
    event.preventDefault();
  };

  choose(id: string): void {
    const before = this.#spoken();
    const marked = this.#runner.unfinished;
    const what = this.#picture.targets.find((one) => one.id === id)?.label;
    clearTimeout(this.#speaking);
    this.#runner.send({ type: 'target.pick', target: id });
    this.#sayHeld();
    // A ruler that was laid, and a mark, give no command: what it reads, or where it is, is all there is to say.
    const now = this.#spoken();
    if (!this.#runner.busy && now !== '' && now !== before) announce(now);
    else if (this.#runner.unfinished && !marked && what) announce(TABLE.marked(what));
  }

  /** Moves by mm at full size; what it measures now is said once the keys rest. */
  nudge(id: string, by: Point): void {
    this.#runner.send({ type: 'target.nudge', target: id, by });
    clearTimeout(this.#speaking);
    this.#speaking = setTimeout(() => announce(this.#spoken()), 350);
  }

  #spoken(): string {
    return spokenReadings(this.#picture.readings, this.#units());
  }

  remove(id: string): void {
    this.#runner.send({ type: 'target.remove', target: id });
  }
}

/** The piece and the part under a pointer. */
function under({ clientX, clientY }: PointerEvent): Over {
  const element = document.elementsFromPoint(clientX, clientY).find((one) => one.closest('[data-piece]'));
  const piece = element?.closest<SVGElement>('[data-piece]')?.dataset['piece'];
  const part = element?.closest<SVGElement>('[data-part]')?.dataset['part'];
  return { ...(piece === undefined ? {} : { piece }), ...(part === undefined ? {} : { part }) };
}
