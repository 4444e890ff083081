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

const lengthOf = (id: string, { from, to }: { readonly from: Point; readonly to: Point }): Reading => ({
  id,
  unit: 'mm',
  value: distance(from, to),
  piece: 'front',
  from,
  to,
});

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
    const last = rulesOf(scene).at(-1);
    const keep = last ? `${last.a}>${last.b} ` : '';
    return { options: { rules: `${keep}${grip.target}>${to.id}` } };
  },
  readings: (scene, work, grip) => {
    const marks = Object.assign({}, ...(frontOf(work)?.parts ?? []).map((part) => part.landmarks));
    const rules = rulesOf(scene).flatMap(({ a, b }) =>
      marks[a] && marks[b] ? [{ from: marks[a], to: marks[b] }] : [],
    );
    const laid = grip ? [...rules.slice(-1), { from: grip.from, to: grip.at }] : rules;
    // The first of two lies there until a third is put down, and it is seen that it goes.
    const goes = grip && rules.length > 1 ? [lengthOf('taken-up', rules[0]!)] : [];
    const lengths = laid
      .filter(({ from, to }) => distance(from, to) > 0.01)
      .map((one, i) => lengthOf(`rule-${i}`, one));
    const [one, two] = laid;
    if (!one || !two || distance(one.from, two.from) > 0.01 || lengths.length < 2)
      return [...goes, ...lengths];
    const value = Math.abs(angleBetween(sub(one.to, one.from), sub(two.to, two.from)));
    return [
      ...goes,
      ...lengths,
      { id: 'angle', unit: 'rad', value, piece: 'front', from: one.from, to: one.to, other: two.to },
    ];
  },
};
