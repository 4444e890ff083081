import { applyTo } from '../geometry/isometry.ts';
import { pointAt } from '../geometry/segment.ts';
import type { Point } from '../geometry/types.ts';
import type { Finding } from '../grading/types.ts';
import { isBack, isWhole, lineOf, pieceSet } from '../machines/scene.ts';
import type { Piece } from '../pattern/types.ts';
import type { CommandName, Fabric, Work } from '../recipe/types.ts';
import type { Units } from '../strings/units.ts';
import { placeLabels } from './labels.ts';
import { late } from './late.ts';
import { notchStrokes } from '../print/notches.ts';
import { cutOf, pieceBox } from './boxes.ts';
import { layOut, placeOf, tableBox } from './layout.ts';
import { findingMarks, readingMarks } from './marks.ts';
import { movedLines } from './moved.ts';
import { tickPath } from './paths.ts';
import type { Frame } from './replay.ts';
import { rulerAt } from './ruler.ts';
import type { ToolRunner } from './runner.svelte.ts';
import { tableLabels } from './table-labels.ts';
import { targets } from './targets.ts';
import { swungParts, turnedParts } from './turned.ts';
import type { Viewport } from './viewport.svelte.ts';

/** A table of less than this many px has no room for pieces that only lie by. */
const NARROW = 600;

const NONE: readonly never[] = [];

/** What the table is to show. */
export interface Shown {
  readonly work: Work;
  readonly tool: CommandName | undefined;
  readonly fabric: Fabric;
  readonly units: Units;
  readonly findings: readonly Finding[];
  readonly readonly: boolean;
  readonly anonymous: boolean;
  readonly bothCloths: boolean;
  /** The back has no part in what is done: it stays in the drawer, and the front is seen larger. */
  readonly frontOnly: boolean;
  readonly frame: Frame | undefined;
}

/** Everything that is seen on the table, derived from what it is to show, the tool in hand, and where it is looked at from. */
export class Picture {
  readonly #input: () => Shown;
  readonly #runner: ToolRunner;
  readonly #view: Viewport;
  /** The cloth whose pieces lie on the table, where that can be chosen. */
  chosen = $state<Fabric>();
  hovered = $state<string>();

  constructor(input: () => Shown, runner: ToolRunner, view: Viewport) {
    this.#input = input;
    this.#runner = runner;
    this.#view = view;
  }

  #in = $derived.by(() => this.#input());
  #work = $derived(this.#in.frame?.work ?? this.#in.work);
  #frame = $derived(this.#in.frame);
  #tool = $derived(this.#in.tool);
  #copied = $derived(this.#in.work.pieces.some((piece) => piece.id.includes('@')));
  fabrics = $derived<readonly Fabric[]>(this.#copied && this.#in.bothCloths ? ['knit', 'woven'] : []);
  fabric = $derived(
    this.#frame?.fabric ?? (this.fabrics.length > 0 ? (this.chosen ?? this.#in.fabric) : this.#in.fabric),
  );
  /** The tool that may be used now. */
  tool = $derived(this.#in.readonly || this.#frame ? undefined : this.#tool);

  // Each by itself: the scene stays the same all through a drag.
  scene = $derived.by(() => (this.tool ? this.#runner.scene : undefined));
  grip = $derived.by(() => (this.tool ? this.#runner.grip : undefined));
  options = $derived.by(() => (this.scene && this.#runner.spec?.options?.(this.scene)) ?? []);
  acts = $derived.by(() => (this.scene && this.#runner.spec?.acts?.(this.scene)) ?? []);
  /** Something can be set above the table with this tool, now or once something is done: the room is kept, so that the paper stays where it is. */
  setting = $derived.by(
    () => this.fabrics.length > 1 || (this.scene && (this.#runner.spec?.options ?? this.#runner.spec?.acts)),
  );

  #after = $derived.by(() => (this.tool ? this.#runner.preview : undefined));
  /** The table as it would be after letting go. */
  preview = $derived(this.#after ?? this.#work);
  #shown = (piece: Piece): boolean => !this.#in.frontOnly || !isBack(piece);
  #pieces = $derived(pieceSet(this.#work, this.fabric).filter(this.#shown));
  overlaid = $derived(
    (this.#frame ? this.#frame.command.do : this.#tool) === 'overlay'
      ? late.overlayOf?.(this.#work, this.#pieces)
      : undefined,
  );
  #standing = $derived(
    this.overlaid
      ? [
          this.overlaid.block,
          ...this.#pieces.filter((one) => !isBack(one) && !this.overlaid?.ids.includes(one.id)),
        ]
      : this.#pieces,
  );
  #aspect = $derived.by(() => (this.#view.height > 0 ? this.#view.width / this.#view.height : 1.6));
  // Where pieces lie follows the work that is stored: a drag must not make the table run away under the hand.
  #placed = $derived.by(() => (this.tool && this.#runner.placed) ?? this.#work.placed);
  layout = $derived(layOut(this.#standing, this.#placed, this.#aspect));
  /** All that lies on the table. */
  box = $derived(tableBox(this.#standing, this.layout));
  /** What is shown first: all of it, or on a narrow screen the pieces that the tool works on. */
  #near = $derived.by(() => {
    const wanted = this.overlaid
      ? [this.overlaid.block]
      : this.#standing.filter(
          ({ id }) =>
            this.targets.some(({ piece }) => piece === id) || (this.#runner.spec?.trail && id === 'front'),
        );
    return this.#view.width < NARROW && wanted.length > 0 ? wanted : this.#standing;
  });
  near = $derived(tableBox(this.#near, this.layout));
  #paper = $derived(pieceBox(this.#work.opened ?? this.#work.block.front));
  /** Changes when other pieces come to be shown, or those of another body: then it is time to look at them. */
  standing = $derived(
    [...this.#standing, ...this.#near].map(({ id }) => id).join(' ') +
      ` paper ${this.#paper.minX} ${this.#paper.maxX}` +
      (this.overlaid ? ' overlaid' : ''),
  );

  /** The block as it is pinned and swung. */
  tracing = $derived.by(
    () => this.#frame?.tracing ?? (this.scene && this.#runner.spec?.tracing?.(this.scene, this.grip)),
  );
  #turned = $derived(
    this.tracing ? swungParts(this.#work, this.tracing) : this.#after && turnedParts(this.#work, this.#after),
  );
  turning = $derived(this.#frame?.turning ?? this.#turned);
  guides = $derived.by(() => {
    const circle = this.scene && this.#runner.spec?.guide?.(this.scene, this.grip);
    const view = { work: this.#work, turning: this.turning, tracing: this.tracing, circle };
    // Read before it is known whether there is anything to draw them: that may be fetched later.
    return late.guides?.(view) ?? NONE;
  });
  moved = $derived(this.#after && !this.#turned ? movedLines(this.#work, this.#after) : undefined);
  #drawn = $derived(this.#turned ? this.#work : (this.moved?.still ?? this.preview));
  pieces = $derived(
    pieceSet(this.#drawn, this.fabric).filter(
      (piece) =>
        this.#shown(piece) &&
        (!this.overlaid || (this.layout.has(piece.id) && piece.id !== this.overlaid.block.id)),
    ),
  );
  cut = $derived.by(() => {
    const cut = this.#runner.spec?.cut;
    return this.#frame?.cut ?? (cut && this.scene && this.grip && cut(this.scene, this.grip));
  });

  targets = $derived(
    targets(this.#in.work, this.tool, {
      fabric: this.fabric,
      units: this.#in.units,
      anonymous: this.#in.anonymous,
      ...(this.scene ? { options: this.scene.options } : {}),
    }).filter(({ piece }) => this.layout.has(piece) && !this.overlaid?.ids.includes(piece)),
  );
  /** The handles where they lie in the work that is stored. */
  resting = $derived.by(() => {
    const held = this.tool && this.#runner.busy ? this.#runner.held : undefined;
    // While something is held, the places for new points would lie beside the line that follows the hand.
    const list = this.targets.filter(({ id, kind }) => !held || kind !== 'add' || held === id);
    return list.map((target) => {
      // The seam that is walked now is marked as chosen.
      const chosen = this.#tool === 'walk' && target.ref === this.options[0]?.value;
      return {
        target,
        held: held === target.id || chosen,
        carried: held === target.id,
        at: this.#seen(target.piece, target.point),
      };
    });
  });
  #carried = $derived(this.resting.find(({ carried }) => carried)?.target.piece);
  /** Where the handle that is held has come to, px. */
  hand = $derived(this.#carried && this.grip && this.#seen(this.#carried, this.grip.at));
  handles = $derived(this.resting.map((one) => (one.carried && this.hand ? { ...one, at: this.hand } : one)));
  #seen(piece: string, point: Point): Point {
    return this.#view.toScreen(applyTo(placeOf(this.layout, piece), point));
  }

  readings = $derived.by(
    () => (this.scene && this.#runner.spec?.readings?.(this.scene, this.preview, this.grip)) ?? [],
  );
  dimensions = $derived(readingMarks(this.readings, this.layout, this.#in.units));
  ticks = $derived.by(() => {
    const lines = this.dimensions.filter(({ rays }) => !rays);
    return lines.map(({ id, tone, from, to }) => {
      return { id, tone, d: tickPath(this.#view.toScreen(from), this.#view.toScreen(to)) };
    });
  });
  angles = $derived.by(() => {
    const angles = this.dimensions.filter(({ rays }) => rays);
    return angles.length === 0 ? NONE : angles;
  });
  marks = $derived(
    this.#frame ? [] : findingMarks(this.#in.findings, this.#standing, this.layout, this.#in.units),
  );
  /** Along a line that is drawn in one stroke, px: nothing is to be written over it. */
  #stroke = $derived.by(() => {
    const line = this.#runner.spec?.trail && lineOf(this.preview);
    if (!line) return [];
    return line.chain.flatMap((s) => [0, 0.25, 0.5, 0.75].map((t) => this.#seen('front', pointAt(s, t))));
  });
  ruler = $derived.by(() => rulerAt(this.#view.k, this.#in.units, this.#view.width < NARROW ? 60 : 130));
  labels = $derived.by(() => {
    const { anonymous, units } = this.#in;
    const { layout, dimensions, marks, handles, hovered, overlaid } = this;
    const view = this.#view;
    const named = !this.#runner.busy;
    const pieces = this.#standing;
    return placeLabels(
      tableLabels({
        pieces,
        layout,
        view,
        dimensions,
        marks,
        handles,
        hovered,
        anonymous,
        units,
        named,
        overlaid,
        // Once they are no longer asked for, a narrow table has no room for the names of what was pointed out.
        identified: anonymous || view.width > NARROW ? this.#work.identified : {},
        opened: this.#work.opened && (isWhole(this.#work.opened) ? 'whole' : 'half'),
        notches: this.#tool === 'ease' || this.#tool === 'renotch' || this.#tool === 'walk',
      }),
      [...handles.map(({ at }) => at), ...this.#stroke],
      view.width,
      view.height,
      this.#legs,
      this.#points,
    );
  });
  /** The legs of the darts, and bust points and notches, px: what is measured is not to be written over. */
  #legs = $derived.by(() =>
    this.#standing.flatMap(({ id, parts }) =>
      parts.flatMap(({ edges }) =>
        edges.flatMap(({ role, chain }) =>
          role === 'dart-leg'
            ? [[this.#seen(id, chain[0]!.a), this.#seen(id, chain.at(-1)!.d)] as const]
            : [],
        ),
      ),
    ),
  );
  #points = $derived.by(() =>
    this.#standing.flatMap((piece) => [
      ...piece.parts.flatMap(({ landmarks }) =>
        Object.entries(landmarks).flatMap(([name, point]) =>
          name.endsWith('/bust-point') ? [this.#seen(piece.id, point)] : [],
        ),
      ),
      ...notchStrokes(piece, cutOf(piece)).map(([first]) => this.#seen(piece.id, first!.a)),
    ]),
  );
}
