import { applyTo } from '../geometry/isometry.ts';
import { lerp } from '../geometry/point.ts';
import type { Point } from '../geometry/types.ts';
import { isBack } from '../machines/scene.ts';
import type { Piece } from '../pattern/types.ts';
import { pieceName } from '../strings/names.ts';
import { TABLE } from '../strings/table.ts';
import type { Units } from '../strings/units.ts';
import { pieceBox } from './boxes.ts';
import type { Label } from './labels.ts';
import { late } from './late.ts';
import { placeOf, type Layout } from './layout.ts';
import type { Dimension, FindingMark } from './marks.ts';
import type { Overlaid } from './overlay.ts';
import type { LabelledTarget } from './targets.ts';

interface LabelView {
  readonly pieces: readonly Piece[];
  readonly layout: Layout;
  readonly view: { toScreen(p: Point): Point };
  readonly dimensions: readonly Dimension[];
  readonly marks: readonly FindingMark[];
  readonly handles: readonly {
    readonly target: LabelledTarget;
    readonly held: boolean;
    readonly at: Point;
  }[];
  readonly hovered: string | undefined;
  readonly anonymous: boolean;
  readonly units: Units;
  /** Names are left out while something is held: the hand needs the room. */
  readonly named: boolean;
  readonly overlaid: Overlaid | undefined;
  /** What the learner pointed out so far, mm. */
  readonly identified: Readonly<Record<string, Point>>;
  /** The paper that is worked on: the complete front with two bust points, or the half of a block whose form was given. */
  readonly opened: 'whole' | 'half' | undefined;
  /** The notches of the pieces are called by name: seams are walked from one to the next. */
  readonly notches: boolean;
}

/** The middle of a side's name where it stands one line further down, from the corner of its piece, px. */
const INTO = 40;
const LOW = 36;

const near = (p: Point, q: Point): boolean => Math.abs(p.x - q.x) + Math.abs(p.y - q.y) < 12;

/** Everything that is written on the table, what matters most first. */
export function tableLabels(view: LabelView): Label[] {
  const at = (p: Point): Point => view.view.toScreen(p);
  const along = ({ from, to }: { from?: Point; to?: Point }): Pick<Label, 'line'> =>
    from && to ? { line: [at(from), at(to)] } : {};
  // A finding says the same number at the same place: once is enough.
  const said = (one: Dimension): boolean =>
    view.marks.some(
      (mark) =>
        mark.text !== '' && one.text.endsWith(mark.text) && near(mark.at, lerp(one.from, one.to, 0.5)),
    );
  const live = view.dimensions
    .filter((one) => !said(one))
    .map((one): Label => ({
      id: `d ${one.id}`,
      text: one.text,
      at: at(lerp(one.from, one.to, 0.5)),
      tone: one.tone,
      ...along(one),
    }));
  const found = view.marks
    .filter(({ text }) => text !== '')
    .map((one): Label => ({
      id: `f ${one.id}`,
      text: one.text,
      at: at(one.at),
      tone: one.tone,
      ...along(one),
    }));
  const hover = view.handles
    .filter(({ target }) => target.id === view.hovered && view.named && !view.anonymous)
    .map(({ target, at: p }): Label => ({ id: `h ${target.id}`, text: target.label, at: p, tone: 'name' }));
  const on = (piece: string) => (p: Point) => at(applyTo(placeOf(view.layout, piece), p));
  const { overlaid, identified, anonymous, named, units } = view;
  const laid = overlaid && late.overlayLabels?.(overlaid, on(overlaid.block.id), units);
  const pointed = view.opened !== 'whole' && named && late.pointedLabels?.(identified, on('front'));
  return [
    ...live,
    ...found,
    ...(laid ?? []),
    ...hover,
    ...(named && !anonymous ? names(view, at) : []),
    ...(pointed || []),
  ];
}

/** Piece names below the pieces, and which side is the wearer's right. */
function names({ pieces, layout, overlaid, opened, notches }: LabelView, at: (p: Point) => Point): Label[] {
  const boxes = pieces.map((piece) => {
    const { minX, minY, maxX, maxY } = pieceBox(piece);
    const place = placeOf(layout, piece.id);
    return [at(applyTo(place, { x: minX, y: minY })), at(applyTo(place, { x: maxX, y: maxY }))] as const;
  });
  // Pushed down below a name it may come to lie on another piece, of which it would then be read.
  const onAnother = ({ x, y }: Point): boolean =>
    boxes.some(([p, q]) => x > p.x && x < q.x && y > p.y && y < q.y);
  return pieces.flatMap((piece): Label[] => {
    const box = pieceBox(piece);
    const place = placeOf(layout, piece.id);
    const centre = (box.minX + box.maxX) / 2;
    const spot = (x: number, y: number): Point => at(applyTo(place, { x, y }));
    const isBlock = overlaid?.block.id === piece.id;
    const name: Label = {
      id: `n ${piece.id}`,
      text: isBlock ? 'block' : (piece.label?.name ?? pieceName(piece.id.split('@')[0] ?? '')),
      at: spot(centre, box.maxY),
      tone: 'name',
      sits: 'middle',
    };
    if (isBack(piece)) return [name];
    const soft = (id: string, text: string, p: Point): Label => ({
      id,
      text,
      at: at(applyTo(place, p)),
      tone: 'soft',
    });
    // Both parts of a hinge carry the bust point that they meet in.
    const points: Readonly<Record<string, Point>> = Object.assign(
      {},
      ...piece.parts.map((one) => one.landmarks),
    );
    const busts = Object.entries(isBlock || !opened ? {} : points).flatMap(([id, p]) => {
      const text = opened === 'half' && id === 'right/bust-point' ? TABLE.bust : TABLE.busts[id];
      return text ? [soft(`b ${piece.id} ${id}`, text, p)] : [];
    });
    const marks = (notches && late.notchNames?.(piece, (p) => at(applyTo(place, p)))) || [];
    const side = (id: string, text: string, x: number, sits: 'start' | 'end'): Label[] => {
      const p = spot(x, box.maxY);
      const low = { x: p.x + (sits === 'start' ? INTO : -INTO), y: p.y + LOW };
      return onAnother(low) ? [] : [{ id: `${id} ${piece.id}`, text, at: p, tone: 'soft', sits }];
    };
    const sides = [
      ...side('r', TABLE.right, box.minX, 'start'),
      ...(box.maxX > 20 ? side('l', TABLE.left, box.maxX, 'end') : []),
    ];
    return [...busts, ...marks, name, ...sides];
  });
}
