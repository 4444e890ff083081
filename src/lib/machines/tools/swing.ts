import { applyTo, rotationByAngle } from '../../geometry/isometry.ts';
import { add, distance, norm, scale, sub } from '../../geometry/point.ts';
import { angleBetween } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import type { Dart } from '../../pattern/types.ts';
import type { Anchor, TurnBy, Work } from '../../recipe/types.ts';
import type { Options, Scene } from '../scene.ts';
import type { Grip } from '../tool-spec.ts';
import type { Leg } from './pairs.ts';

/** How far the pin was moved from where it stands by itself, mm. */
const offsetOf = (scene: Scene, dart: string): Point => {
  const [x = 0, y = 0] = String(scene.options[`pin:${dart}`] ?? '0 0')
    .split(' ')
    .map(Number);
  return { x, y };
};

/** Where the pin of a dart stands that by itself would stand at `tip`. */
export const pinAt = (scene: Scene, dart: string, tip: Point): Point => add(tip, offsetOf(scene, dart));

/** The pin as an anchor; `off`: how the dart's tip lies off its bust point. */
export function pinAnchor(scene: Scene, dart: { id: string; bustPoint: string }, off: Point): Anchor {
  const { x, y } = add(off, offsetOf(scene, dart.id));
  return x === 0 && y === 0 ? { landmark: dart.bustPoint } : { landmark: dart.bustPoint, dx: x, dy: y };
}

/** A setting of the tool that moves the pin. */
export const pinMoved = (dart: string, tip: Point, to: Point): { options: Record<string, string> } => ({
  options: { [`pin:${dart}`]: `${to.x - tip.x} ${to.y - tip.y}` },
});

/** The settings once the table has changed: what was turned and is taken back is begun anew with the pin where it stands by itself. */
export const pinsAgain = ({ options, work }: Scene, now: Work): Options =>
  now.turns.length < work.turns.length
    ? Object.fromEntries(Object.entries(options).filter(([id]) => !id.startsWith('pin:')))
    : options;

/** What is swung round a pin, and how far it has to go for the legs to meet. */
export interface Swing {
  readonly pin: Point;
  /** The turn that brings the legs together, radians; only about the tip is there one. */
  readonly closing: number | undefined;
  /** How long the leg is that turns, mm. */
  readonly leg: number;
}

export function swingOf(pin: Point, own: Leg, other: Leg): Swing {
  const centred = distance(pin, own.tip) < 1e-6;
  const closing = centred ? angleBetween(sub(own.end, pin), sub(other.end, pin)) : undefined;
  return { pin, closing, leg: Math.max(1, distance(own.end, pin)) };
}

export const turned = ({ pin }: Swing, grip: Grip): number =>
  angleBetween(sub(grip.from, pin), sub(grip.at, pin));
const atAngle = ({ pin }: Swing, grip: Grip, angle: number): Point =>
  applyTo(rotationByAngle(pin, angle), grip.from);

/** How near the leg's end comes to where the legs meet, mm; what is this near counts as meeting. */
const MEETS = 0.05;
const meets = (swing: Swing, angle: number, within: number): boolean =>
  swing.closing !== undefined && Math.abs(angle - swing.closing) * swing.leg <= within;

/** Round the pin to where the pointer is; it holds where the legs meet. */
export function pulledRound(scene: Scene, swing: Swing, grip: Grip, point: Point): Point {
  const arm = sub(point, swing.pin);
  if (norm(arm) < 1e-6) return grip.at;
  const radius = distance(grip.from, swing.pin);
  const at = add(swing.pin, scale(arm, radius / norm(arm)));
  return meets(swing, turned(swing, { ...grip, at }), scene.reach)
    ? atAngle(swing, grip, swing.closing!)
    : at;
}

/** Round the pin by so many mm at the leg's end; it never passes where the legs meet without stopping. */
export function nudgedRound(swing: Swing, grip: Grip, by: Point): Point {
  const now = turned(swing, grip);
  const next = now + (by.x + by.y) / swing.leg;
  const { closing } = swing;
  const crosses =
    closing !== undefined && !meets(swing, now, MEETS) && (now - closing) * (next - closing) <= 0;
  return atAngle(swing, grip, crosses ? closing : next);
}

/** What the turn is meant as; undefined for none. */
export function wishOf(swing: Swing, grip: Grip): TurnBy | undefined {
  const angle = turned(swing, grip);
  if (Math.abs(angle) * swing.leg < 0.01) return undefined;
  return meets(swing, angle, MEETS) ? { until: 'legs-meet' } : { angle };
}

/** The setting for how much of a dart the button closes: it counts until the dart was turned, then all of what is left is meant again. */
export const shareId = ({ id, residual }: Dart): string => `share:${id}:${residual}`;
/** The share of the dart that the button closes, 0 to 1. */
export const shareOf = (scene: Scene, dart: Dart): number => {
  const value = scene.options[shareId(dart)];
  return typeof value === 'number' && value > 0 ? value : 1;
};
export const byShare = (share: number): TurnBy => (share === 1 ? { until: 'legs-meet' } : { share });
