import { chainLength } from '../../geometry/chain.ts';
import { reverseChain } from '../../geometry/chain-moved.ts';
import { applyTo, rotationByAngle } from '../../geometry/isometry.ts';
import { distance, sub } from '../../geometry/point.ts';
import { angleBetween } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import type { Dart, Piece } from '../../pattern/types.ts';
import type { Pivot, TurnBy } from '../../recipe/types.ts';
import { frontOf, middleOf, type Scene } from '../scene.ts';
import type { Grip, Reading, ToolSpec, ToolTarget, Tracing } from '../tool-spec.ts';
import { pinned, placeOn, type Pinned } from './pinned.ts';
import { anchorAt, edgePlace, nextSlash, placeReadings, slashEdges, type EdgePlace } from './slashes.ts';
import {
  byShare,
  nudgedRound,
  pinAnchor,
  pinAt,
  pinMoved,
  pinsAgain,
  pulledRound,
  shareId,
  shareOf,
  swingOf,
  turned,
  wishOf,
  type Swing,
} from './swing.ts';

/** The front with its darts that can be closed, the one that is to be, and the mark where the new one goes. */
interface Table {
  readonly front: Piece;
  readonly darts: readonly Dart[];
  readonly dart: Dart | undefined;
  readonly mark: EdgePlace | undefined;
  readonly block: Pinned | undefined;
}

function tableOf(scene: Scene): Table | undefined {
  const front = frontOf(scene.work);
  if (!front || !scene.work.opened || front.seam) return undefined;
  const darts = front.darts.filter((dart) => dart.state === 'working' && Math.abs(dart.residual) > 1e-9);
  const dart = darts.find(({ id }) => id === scene.options['dart']) ?? darts[0];
  const text = String(scene.options['mark'] ?? '');
  const mark = placeOn(slashEdges(front), (edge) => chainLength(edge.chain), text);
  return { front, darts, dart, mark, block: dart && mark && pinned(front, dart, mark) };
}

type Which = 'freed' | 'rest';
/** What swings: what is not traced first. */
const partOf = (scene: Scene): Which => (scene.options['still'] === 'side' ? 'rest' : 'freed');

function command(scene: Scene, { dart, mark, block }: Table, part: Which, by: TurnBy): Pivot | undefined {
  if (!dart || !mark) return undefined;
  const about = pinAnchor(scene, dart, block?.off ?? { x: 0, y: 0 });
  const slash = nextSlash(scene.work, 'new');
  return { do: 'pivot', dart: dart.id, slash, from: anchorAt(mark), about, by, part };
}

interface Held {
  readonly table: Table;
  readonly block: Pinned;
  readonly which: Which;
  readonly swing: Swing;
}

function heldBy(scene: Scene, grip: Grip | undefined): Held | undefined {
  const table = tableOf(scene);
  const block = table?.block;
  if (!table || !block) return undefined;
  const [head, , wanted] = grip?.target.split(':') ?? [];
  const which = head === 'turn' && (wanted === 'freed' || wanted === 'rest') ? wanted : partOf(scene);
  const { legs, tip, pair } = block;
  const [own, other] = which === 'freed' ? [legs.freed, legs.rest] : [legs.rest, legs.freed];
  const swing = swingOf(pinAt(scene, pair.dart.id, tip), { ...own, tip }, other);
  return { table, block, which, swing };
}

const isSwing = (grip: Grip | undefined): boolean => grip?.target.startsWith('turn:') ?? false;

/** What is traced of the block, and how far it is swung. */
export function tracingOf(block: Pinned, which: Which, pin: Point, angle: number): Tracing {
  const [still, moves] = which === 'freed' ? (['rest', 'freed'] as const) : (['freed', 'rest'] as const);
  return {
    piece: 'front',
    pin,
    angle,
    first: reverseChain(block.outline[still]),
    second: block.outline[moves],
  };
}

function swungReadings({ table, block, which, swing }: Held, angle: number): Reading[] {
  const moved = (point: Point): Point => applyTo(rotationByAngle(swing.pin, angle), point);
  const [own, other] =
    which === 'freed' ? [block.legs.freed, block.legs.rest] : [block.legs.rest, block.legs.freed];
  const { dart } = block.pair;
  const mark = table.mark!.point;
  const [from, to] = [moved(own.end), moved(mark)];
  const need = angleBetween(sub(own.end, block.tip), sub(other.end, block.tip));
  // Swung on past where the legs meet they overlap; swung the other way the outline overlaps at the mark.
  const gap = (angle - need) * need > 1e-9 ? 'overlap' : 'gap';
  const opened = angle * need < -1e-9 ? 'overlap' : 'opened';
  const base = { unit: 'mm', piece: 'front', dart: dart.id } as const;
  return [
    { ...base, id: gap, value: distance(from, other.end), from, to: other.end },
    { ...base, id: opened, value: distance(mark, to), from: mark, to },
  ];
}

/**
 * Pins the block and swings it: mark the place of the new dart on an edge, pin the block, swing it until the dart is closed. What lies
 * still is traced first, what is swung after; no paper is cut.
 */
export const pivot: ToolSpec = {
  id: 'pivot',
  options: (scene) => {
    const table = tableOf(scene);
    if (!table?.dart || !table.mark) return [];
    const { darts, dart } = table;
    const choices = darts.map(({ id }) => id);
    return [
      ...(choices.length > 1 ? [{ id: 'dart', kind: 'choice', value: dart.id, choices } as const] : []),
      {
        id: 'still',
        kind: 'choice',
        value: partOf(scene) === 'rest' ? 'side' : 'centre',
        choices: ['centre', 'side'],
      },
      { id: shareId(dart), kind: 'percent', value: shareOf(scene, dart) },
    ];
  },
  stillChosen: pinsAgain,
  acts: (scene) => {
    const table = tableOf(scene);
    const share = table?.dart ? shareOf(scene, table.dart) : 1;
    const given = table && command(scene, table, partOf(scene), byShare(share));
    return given ? [{ id: `swing:${given.dart}`, about: String(share), command: given }] : [];
  },
  targets: (scene) => {
    const table = tableOf(scene);
    if (!table) return [];
    const { front, dart, mark, block } = table;
    if (!mark)
      return slashEdges(front).map(({ edge }): ToolTarget => ({
        id: `mark:${edge.id}`,
        kind: 'edge',
        point: middleOf(edge.chain),
        piece: 'front',
        how: 'tap',
        ref: edge.id,
        anywhere: true,
      }));
    const base = { piece: 'front', how: 'carry' } as const;
    const own: ToolTarget = { ...base, id: 'mark', kind: 'point', point: mark.point, ref: mark.edge.id };
    if (!dart || !block) return [own];
    const handle = (which: Which): ToolTarget => ({
      ...base,
      id: `turn:${dart.id}:${which}`,
      kind: 'turn',
      point: block.legs[which].end,
      ref: which,
      dart: dart.id,
    });
    const pin = pinAt(scene, dart.id, block.tip);
    return [
      own,
      { ...base, id: `pin:${dart.id}`, kind: 'pin', point: pin, ref: dart.bustPoint, dart: dart.id },
      handle('freed'),
      handle('rest'),
    ];
  },
  press: (scene, point, over) => {
    const table = tableOf(scene);
    if (!table) return undefined;
    if (!table.mark) {
      const near = edgePlace(table.front, point);
      return near && near.off <= scene.reach ? { target: 'mark', how: 'tap' } : undefined;
    }
    const { dart, block } = table;
    return dart && block && over.piece === 'front'
      ? { target: `turn:${dart.id}:${partOf(scene)}`, how: 'carry' }
      : undefined;
  },
  pull: (scene, grip, point) => {
    const table = tableOf(scene);
    if (grip.target.startsWith('mark')) return (table && edgePlace(table.front, point)?.point) ?? point;
    if (grip.target.startsWith('pin:')) {
      const tip = table?.block?.tip;
      return tip && distance(tip, point) <= scene.reach ? tip : point;
    }
    const held = heldBy(scene, grip);
    return held ? pulledRound(scene, held.swing, grip, point) : grip.at;
  },
  nudge: (scene, grip, by) => {
    const to = { x: grip.at.x + by.x, y: grip.at.y + by.y };
    const table = tableOf(scene);
    if (grip.target.startsWith('mark')) return (table && edgePlace(table.front, to)?.point) ?? to;
    const held = isSwing(grip) ? heldBy(scene, grip) : undefined;
    return held ? nudgedRound(held.swing, grip, by) : to;
  },
  propose: (scene, grip) => {
    const table = tableOf(scene);
    if (!table) return undefined;
    if (grip.target.startsWith('mark')) {
      const place = edgePlace(table.front, grip.at);
      return place && { options: { mark: `${place.edge.id} ${place.along / place.whole}` } };
    }
    if (grip.target.startsWith('pin:'))
      return table.dart && table.block && pinMoved(table.dart.id, table.block.tip, grip.at);
    const held = heldBy(scene, grip);
    const by = held && wishOf(held.swing, grip);
    const given = by && command(scene, table, held.which, by);
    return given && { command: given };
  },
  tracing: (scene, grip) => {
    const held = heldBy(scene, grip);
    if (!held) return undefined;
    const angle = grip && isSwing(grip) ? turned(held.swing, grip) : 0;
    return tracingOf(held.block, held.which, held.swing.pin, angle);
  },
  readings: (scene, _work, grip) => {
    const table = tableOf(scene);
    if (!table || !grip) return [];
    if (grip.target.startsWith('mark')) {
      const place = edgePlace(table.front, grip.at);
      return place ? placeReadings('front', place) : [];
    }
    const held = heldBy(scene, grip);
    if (!held) return [];
    if (isSwing(grip)) return swungReadings(held, turned(held.swing, grip));
    const { tip } = held.block;
    const value = distance(tip, grip.at);
    return value < 0.05
      ? []
      : [{ id: 'from-bust', unit: 'mm', value, piece: 'front', from: tip, to: grip.at }];
  },
};
