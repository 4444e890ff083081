import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { applyTo, rotationByAngle } from '../../geometry/isometry.ts';
import { add, distance, norm, scale, sub } from '../../geometry/point.ts';
import { angleBetween } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import type { Dart, Edge, Part, Piece } from '../../pattern/types.ts';
import type { Anchor, Command, Work } from '../../recipe/types.ts';
import { once } from '../once.ts';
import { frontPieces, landmarkIn, type Scene } from '../scene.ts';
import type { Grip, Reading, ToolSpec, ToolTarget } from '../tool.ts';
import { legOf } from './dart-legs.ts';

export type Which = 'freed' | 'rest';

/** A slashed dart that is still open, seen from the part that the slash freed and from the rest. */
interface Opening {
  readonly piece: Piece;
  readonly dart: Dart;
  readonly bust: Point;
  readonly freed: Part;
  readonly rest: Part;
}

/** The darts that may be turned; worked out once for each scene, which stays the same all through a drag. */
export const openDarts = once((scene: Scene): readonly Opening[] =>
  frontPieces(scene).flatMap((piece) =>
    piece.hinges.flatMap((hinge): Opening[] => {
      const dart = piece.darts.find((one) => one.id === hinge.dart);
      const bust = dart && landmarkIn([piece], dart.bustPoint)?.point;
      const [freed, rest] = hinge.parts.map((id) => piece.parts.find((part) => part.id === id));
      if (!dart || !bust || !freed || !rest || dart.state === 'closed') return [];
      return [{ piece, dart, bust, freed, rest }];
    }),
  ),
);

/** The outer end of the dart leg that lies on a part, mm. */
function legEnd({ piece, dart, bust }: Opening, part: Part): Point | undefined {
  for (const id of [dart.upper, dart.lower]) {
    const leg = legOf(piece, id);
    if (leg?.part.id !== part.id) continue;
    const [a, b] = [chainStart(leg.edge.chain), chainEnd(leg.edge.chain)];
    return distance(a, bust) > distance(b, bust) ? a : b;
  }
  return undefined;
}

const offsetOf = (scene: Scene, dart: string): Point => {
  const [x = 0, y = 0] = String(scene.options[`pin:${dart}`] ?? '0 0')
    .split(' ')
    .map(Number);
  return { x, y };
};
const pinOf = (scene: Scene, { dart, bust }: Opening): Point => add(bust, offsetOf(scene, dart.id));

function aboutOf(scene: Scene, { dart }: Opening): Anchor {
  const { x, y } = offsetOf(scene, dart.id);
  return x === 0 && y === 0 ? { landmark: dart.bustPoint } : { landmark: dart.bustPoint, dx: x, dy: y };
}

interface Held {
  readonly opening: Opening;
  readonly which: Which;
  readonly pin: Point;
  /** The turn that brings the legs together, radians; only about the tip is there one. */
  readonly closing: number | undefined;
  readonly leg: number;
}

const known = once((_scene: Scene) => new Map<string, Held | undefined>());

function heldBy(scene: Scene, { target }: Grip): Held | undefined {
  const all = known(scene);
  if (!all.has(target)) all.set(target, holding(scene, target));
  return all.get(target);
}

function holding(scene: Scene, target: string): Held | undefined {
  const [, id, which] = target.split(':');
  const opening = openDarts(scene).find(({ dart }) => dart.id === id);
  if (!opening || (which !== 'freed' && which !== 'rest')) return undefined;
  const own = legEnd(opening, which === 'freed' ? opening.freed : opening.rest);
  const other = legEnd(opening, which === 'freed' ? opening.rest : opening.freed);
  if (!own || !other) return undefined;
  const pin = pinOf(scene, opening);
  const centred = distance(pin, opening.bust) < 1e-9;
  const closing = centred ? angleBetween(sub(own, pin), sub(other, pin)) : undefined;
  return { opening, which, pin, closing, leg: Math.max(1, distance(own, pin)) };
}

const turned = (held: Held, grip: Grip): number =>
  angleBetween(sub(grip.from, held.pin), sub(grip.at, held.pin));
const atAngle = (held: Held, grip: Grip, angle: number): Point =>
  applyTo(rotationByAngle(held.pin, angle), grip.from);

/** How near the leg's end comes to where the legs meet, mm; what is this near counts as meeting. */
const MEETS = 0.05;
const meets = (held: Held, angle: number, within: number): boolean =>
  held.closing !== undefined && Math.abs(angle - held.closing) * held.leg <= within;

function command(scene: Scene, held: Held, angle: number): Command {
  const { opening, which } = held;
  const base = { do: 'turn', dart: opening.dart.id, part: which, about: aboutOf(scene, opening) } as const;
  return { ...base, by: meets(held, angle, MEETS) ? { until: 'legs-meet' } : { angle } };
}

/** How far two edges that are sewn to each other, one on each part, stand apart at their outer end: the width opened. */
function opened(work: Work, { piece: { id }, dart, bust }: Opening): Reading | undefined {
  const piece = work.pieces.find((one) => one.id === id);
  const hinge = piece?.hinges.find((one) => one.dart === dart.id);
  const [a, b] = (hinge?.parts ?? []).map((part) => piece?.parts.find((one) => one.id === part));
  let widest: { from: Point; to: Point; reach: number } | undefined;
  for (const edge of a?.edges ?? []) {
    const partner: Edge | undefined = b?.edges.find((one) => one.id === edge.partner);
    if (!partner || edge.role !== 'style-line') continue;
    const [p, q] = [chainStart(edge.chain), chainEnd(edge.chain)];
    const outer = distance(p, bust) > distance(q, bust);
    const from = outer ? p : q;
    const to = outer ? chainEnd(partner.chain) : chainStart(partner.chain);
    const reach = distance(from, bust);
    if (!widest || reach > widest.reach) widest = { from, to, reach };
  }
  return (
    widest && {
      id: 'opened',
      unit: 'mm',
      value: distance(widest.from, widest.to),
      piece: id,
      from: widest.from,
      to: widest.to,
      dart: dart.id,
    }
  );
}

/** Turns a part about the pin: pulled round, nudged, typed, or until the legs meet. The pin stands in the bust point unless it is moved. */
export const turn: ToolSpec = {
  id: 'turn',
  options: (scene) => {
    const value = scene.options['part'] ?? 'freed';
    return openDarts(scene).length > 0
      ? [{ id: 'part', kind: 'choice', value, choices: ['freed', 'rest'] }]
      : [];
  },
  acts: (scene) =>
    openDarts(scene).map((opening) => ({
      id: `meet:${opening.dart.id}`,
      about: opening.dart.id,
      command: {
        do: 'turn',
        dart: opening.dart.id,
        part: String(scene.options['part'] ?? 'freed'),
        about: aboutOf(scene, opening),
        by: { until: 'legs-meet' },
      },
    })),
  targets: (scene) =>
    openDarts(scene).flatMap((opening) => {
      const { piece, dart, freed, rest } = opening;
      const base = { piece: piece.id, how: 'carry' as const, dart: dart.id };
      const handle = (part: Part, which: Which): ToolTarget[] => {
        const point = legEnd(opening, part);
        return point ? [{ ...base, id: `turn:${dart.id}:${which}`, kind: 'turn', point, ref: which }] : [];
      };
      return [
        ...handle(freed, 'freed'),
        ...handle(rest, 'rest'),
        { ...base, id: `pin:${dart.id}`, kind: 'pin', point: pinOf(scene, opening), ref: dart.bustPoint },
      ];
    }),
  press: (scene, _point, over) => {
    for (const { dart, freed, rest } of openDarts(scene))
      for (const [part, which] of [
        [freed, 'freed'],
        [rest, 'rest'],
      ] as const)
        if (part.id === over.part) return { target: `turn:${dart.id}:${which}`, how: 'carry' };
    return undefined;
  },
  pull: (scene, grip, point) => {
    if (grip.target.startsWith('pin:')) {
      const bust = openDarts(scene).find(({ dart }) => `pin:${dart.id}` === grip.target)?.bust;
      return bust && distance(bust, point) <= scene.reach ? bust : point;
    }
    const held = heldBy(scene, grip);
    const arm = held && sub(point, held.pin);
    if (!held || !arm || norm(arm) < 1e-6) return grip.at;
    const radius = distance(grip.from, held.pin);
    const at = add(held.pin, scale(arm, radius / norm(arm)));
    return meets(held, turned(held, { ...grip, at }), scene.reach) ? atAngle(held, grip, held.closing!) : at;
  },
  nudge: (scene, grip, by) => {
    const held = heldBy(scene, grip);
    if (!held) return add(grip.at, by);
    const now = turned(held, grip);
    const next = now + (by.x + by.y) / held.leg;
    const { closing } = held;
    const crosses =
      closing !== undefined && !meets(held, now, MEETS) && (now - closing) * (next - closing) <= 0;
    return atAngle(held, grip, crosses ? closing : next);
  },
  propose: (scene, grip) => {
    if (grip.target.startsWith('pin:')) {
      const opening = openDarts(scene).find(({ dart }) => `pin:${dart.id}` === grip.target);
      const off = opening && sub(grip.at, opening.bust);
      return off && { options: { [grip.target]: `${off.x} ${off.y}` } };
    }
    const held = heldBy(scene, grip);
    if (!held) return undefined;
    const angle = turned(held, grip);
    return Math.abs(angle) * held.leg < 0.01 ? undefined : { command: command(scene, held, angle) };
  },
  readings: (scene, work) =>
    openDarts(scene).flatMap((opening): Reading[] => {
      const { piece, dart } = opening;
      const now = work.pieces.find((one) => one.id === piece.id);
      const [upper, lower] = [dart.upper, dart.lower].map((id) => now && legOf(now, id)?.edge.chain);
      const width = opened(work, opening);
      if (!upper || !lower) return width ? [width] : [];
      // The outer ends of the legs: of each, the end away from where they meet.
      const [from, to] = [upper, lower].map((chain) => {
        const [a, b] = [chainStart(chain), chainEnd(chain)];
        return distance(a, opening.bust) > distance(b, opening.bust) ? a : b;
      });
      if (!from || !to) return [];
      const gap: Reading = {
        id: 'gap',
        unit: 'mm',
        value: distance(from, to),
        piece: piece.id,
        from,
        to,
        dart: dart.id,
      };
      return width ? [gap, width] : [gap];
    }),
};
