import { distance, sub } from '../../geometry/point.ts';
import { angleBetween } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import { snap } from '../../recipe/snap.ts';
import { frontOf, type Scene } from '../scene.ts';
import type { Reading, ToolSpec } from '../tool-spec.ts';

/** A ruler laid from one point to another; kept as text in the tool's settings, since it is no part of the work. */
interface Rule {
  readonly a: string;
  readonly b: string;
}
const rulesOf = (scene: Scene): readonly Rule[] =>
  String(scene.options['rules'] ?? '')
    .split(' ')
    .flatMap((pair) => {
      const [a, b] = pair.split('>');
      return a && b ? [{ a, b }] : [];
    });

interface Laid {
  readonly from: Point;
  readonly to: Point;
}

/** Of rulers that lie from one point, the two that were laid last, in the order in which they were. */
function atOnePoint(laid: readonly Laid[]): readonly [Laid, Laid] | undefined {
  const two = laid.findLast((one, i) => laid.findIndex(({ from }) => distance(from, one.from) < 0.01) < i);
  const one = two && laid.slice(0, laid.indexOf(two)).findLast(({ from }) => distance(from, two.from) < 0.01);
  return one && [one, two];
}

/** As many rulers lie at once as there are sides to a dart. */
const MOST = 3;

/** A ruler and a protractor: pull from point to point; two rulers from one point show the angle between them. */
export const read: ToolSpec = {
  id: 'read',
  targets: ({ work }) =>
    (frontOf(work)?.parts ?? []).flatMap((part) =>
      Object.entries(part.landmarks).map(([id, point]) => ({
        id,
        kind: 'landmark' as const,
        point,
        piece: 'front',
        how: 'carry' as const,
        ref: id,
      })),
    ),
  pull: (scene, _grip, point) => snap(scene.work, point, scene.reach, ['landmark'], 'front').point,
  propose: (scene, grip) => {
    const to = snap(scene.work, grip.at, Math.max(scene.reach, 1), ['landmark'], 'front');
    if (to.snapped !== 'landmark' || to.id === undefined || to.id === grip.target) return undefined;
    const now = { a: grip.target, b: to.id };
    const others = rulesOf(scene).filter(({ a, b }) => !(a === now.a && b === now.b));
    const rules = [...others.slice(1 - MOST), now].map(({ a, b }) => `${a}>${b}`).join(' ');
    return { options: { rules } };
  },
  readings: (scene, work, grip) => {
    const marks = Object.assign({}, ...(frontOf(work)?.parts ?? []).map((part) => part.landmarks));
    const rules = rulesOf(scene).flatMap(({ a, b }) =>
      marks[a] && marks[b] ? [{ from: marks[a], to: marks[b] }] : [],
    );
    const all = grip ? [...rules.slice(1 - MOST), { from: grip.from, to: grip.at }] : rules;
    const laid = all.filter(({ from, to }) => distance(from, to) > 0.01);
    const lengths = laid.map(({ from, to }, i): Reading => {
      return { id: `rule-${i}`, unit: 'mm', value: distance(from, to), piece: 'front', from, to };
    });
    const pair = atOnePoint(laid);
    if (!pair) return lengths;
    const [one, two] = pair;
    const value = Math.abs(angleBetween(sub(one.to, one.from), sub(two.to, two.from)));
    return [
      ...lengths,
      { id: 'angle', unit: 'rad', value, piece: 'front', from: one.from, to: one.to, other: two.to },
    ];
  },
};
