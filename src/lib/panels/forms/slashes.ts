import { frontOf } from '../../machines/scene.ts';
import { nextSlash, slashEnds, uncutSlashes, type SlashEnd } from '../../machines/tools/slashes.ts';
import type { Anchor } from '../../recipe/types.ts';
import { dartName, nameOf } from '../../strings/names.ts';
import { placeFields, placeTyped } from './edge-place.ts';
import {
  choice,
  length,
  missingNumber,
  number,
  text,
  type Field,
  type FormMaker,
  type Option,
  type Values,
} from './form.ts';

/** Offsets of less than this are none, mm. */
const NONE = 1e-9;

const NAME = /^[a-z][a-z0-9-]{0,39}$/;

/** The box for the name of a new dart. */
export const nameField = (name: string): Field => ({
  id: 'slash',
  label: 'Name',
  kind: 'text',
  value: name,
});
/** What is wrong with a name, or undefined. */
export const nameProblem = (name: string): string | undefined =>
  NAME.test(name) ? undefined : 'Name: small letters, numbers and hyphens are expected, a letter first.';

const endName = ({ landmark, dart }: SlashEnd): string =>
  landmark === undefined ? `the tip of the ${dartName(dart ?? '')}` : `the ${nameOf(landmark)}`;

/** So far from an anchor at a landmark, mm. */
export function beside(anchor: Anchor, dx: number, dy: number): Anchor {
  if (!('landmark' in anchor)) return anchor;
  const [x, y] = [(anchor.dx ?? 0) + dx, (anchor.dy ?? 0) + dy];
  const { landmark } = anchor;
  return Math.abs(x) < NONE && Math.abs(y) < NONE ? { landmark } : { landmark, dx: x, dy: y };
}

export const drawSlash: FormMaker = (work, _fabric, units) => {
  const front = frontOf(work);
  if (!front || !work.opened || front.seam) return [];
  const ends = slashEnds(front);
  const drawn = uncutSlashes(front).map(({ id }) => id);
  const when = { field: 'way', is: 'bent' } as const;
  const fields: Field[] = [
    nameField(nextSlash(work)),
    ...placeFields(front, units),
    choice(
      'to',
      'to',
      ends.map((end) => ({ value: end.id, label: endName(end) })),
    ),
    length('dx', "beside it, + to the wearer's left"),
    length('dy', 'beside it, + downwards'),
    choice('way', 'runs', [
      { value: 'straight', label: 'straight' },
      { value: 'bent', label: 'over an alternate pivot' },
    ]),
    { ...length('vx', "Pivot: from that point, + to the wearer's left"), when },
    { ...length('vy', 'Pivot: from that point, + downwards'), when },
  ];
  return [
    {
      id: 'draw-slash',
      title: 'Draw a slash line',
      note:
        drawn.length === 0
          ? 'No slash line is drawn yet.'
          : `Drawn so far: ${drawn.map(dartName).join(', ')}. The same name draws it again.`,
      fields,
      submit: 'Draw the line',
      build: (values) => {
        const slash = text(values, 'slash').trim();
        const bent = text(values, 'way') === 'bent';
        const problem =
          nameProblem(slash) ?? missingNumber(values, ['dx', 'dy', ...(bent ? ['vx', 'vy'] : [])], fields);
        if (problem) return problem;
        const from = placeTyped(front, values, units);
        if (typeof from === 'string') return from;
        const end = ends.find(({ id }) => id === text(values, 'to'));
        if (!end) return 'To: a point is expected.';
        const off = (x: string, y: string): Anchor =>
          beside(end.anchor, number(values, x), number(values, y));
        const via = bent ? { via: off('vx', 'vy') } : {};
        return { do: 'draw-slash', slash, from, ...via, to: off('dx', 'dy') };
      },
    },
  ];
};

export const cutSlash: FormMaker = (work) => {
  const front = frontOf(work);
  const options = (front ? uncutSlashes(front) : []).map(({ id }): Option => ({
    value: id,
    label: dartName(id),
  }));
  if (options.length === 0) return [];
  const fields = [
    choice('slash', 'Cut', options),
    length('past', 'Past the tip (0 stops at it, − stops short)'),
  ];
  return [
    {
      id: 'cut-slash',
      title: 'Cut along a slash line from the edge to its end',
      fields,
      submit: 'Cut',
      build: (values: Values) =>
        missingNumber(values, ['past'], fields) ?? {
          do: 'cut-slash',
          slash: text(values, 'slash'),
          past: number(values, 'past'),
        },
    },
  ];
};
