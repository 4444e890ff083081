import { isWhole } from '../../machines/scene.ts';
import { ASKED } from '../../machines/tools/identify.ts';
import { THINGS } from '../../strings/thing-words.ts';
import { formatLength, sizeOf, type Units } from '../../strings/units.ts';
import { chainEnd, chainLength, chainStart } from '../../geometry/chain.ts';
import type { Point } from '../../geometry/types.ts';
import type { Work } from '../../recipe/types.ts';
import { choice, missingNumber, number, text, type Field, type FormMaker, type Option } from './form.ts';

const place = (p: Point, units: Units): string => {
  const across = formatLength(Math.abs(p.x), units);
  const level =
    Math.abs(p.y) < 0.5
      ? 'on the bust line'
      : `${formatLength(Math.abs(p.y), units)} ${p.y < 0 ? 'above' : 'below'} it`;
  return Math.abs(p.x) < 0.5 ? `at the front edge, ${level}` : `${across} from the front edge, ${level}`;
};

/** Points and edges described by where they lie, not by name: naming them is the exercise. */
function candidates(work: Work, units: Units): Option[] {
  const part = work.pieces.find((piece) => piece.id === 'front')?.parts[0];
  if (!part) return [];
  const points = Object.entries(part.landmarks).map(([id, p]) => ({
    value: `landmark:${id}`,
    label: `point ${place(p, units)}`,
  }));
  const edges = part.edges.map((edge) => {
    const straight = edge.chain.every((segment) => segment.kind === 'line') ? 'straight' : 'curved';
    const ends = `${place(chainStart(edge.chain), units)} to ${place(chainEnd(edge.chain), units)}`;
    return {
      value: `edge:${edge.id}`,
      label: `${straight} edge, ${formatLength(chainLength(edge.chain), units)}, ${ends}`,
    };
  });
  return [...points, ...edges];
}

export const identify: FormMaker = (work, _fabric, units, asked = ASKED) => {
  const options = candidates(work, units);
  if (options.length === 0) return [];
  const things = asked.map((value): Option => ({ value, label: THINGS[value] ?? value }));
  return [
    {
      id: 'identify',
      title: 'Point something out',
      note: `Lengths from the front edge and from the bust line (the level of the fullest part), ${sizeOf(units) > 1 ? 'half scale' : 'full size'}.`,
      fields: [choice('what', 'I point out', things), choice('at', 'It is the', options)],
      submit: 'Point it out',
      build: (values) => {
        const at = text(values, 'at');
        const id = at.slice(at.indexOf(':') + 1);
        const anchor = at.startsWith('edge:') ? { on: id, at: 0.5 } : { landmark: id };
        return { do: 'identify', what: text(values, 'what'), at: anchor };
      },
    },
  ];
};

export const read: FormMaker = () =>
  (['dart-angle', 'leg-length', 'intake'] as const).map((what) => {
    const fields: Field[] = [
      what === 'dart-angle'
        ? {
            id: 'value',
            label: 'Angle between the legs, carried on to the bust point',
            kind: 'angle',
            value: '',
          }
        : {
            id: 'value',
            label:
              what === 'intake' ? 'Intake, from leg end to leg end' : 'Leg, from its end to the bust point',
            kind: 'length',
            value: '',
          },
    ];
    return {
      id: `read-${what}`,
      title: { 'dart-angle': "The dart's angle", 'leg-length': 'Leg length', intake: 'Intake' }[what],
      fields,
      submit: 'Enter',
      build: (values) =>
        missingNumber(values, ['value'], fields) ?? { do: 'read', what, value: number(values, 'value') },
    };
  });

export const openOut: FormMaker = (work, _fabric, units) => {
  const front = work.pieces.find((piece) => piece.id === 'front');
  if (!front || (work.opened && isWhole(work.opened))) return [];
  const straight = front.parts[0]?.edges.filter(
    (edge) => edge.role !== 'dart-leg' && edge.chain.length === 1 && edge.chain[0]?.kind === 'line',
  );
  const options = (straight ?? []).map((edge) => ({
    value: edge.id,
    label: `${formatLength(chainLength(edge.chain), units)} edge, ${place(chainStart(edge.chain), units)} to ${place(chainEnd(edge.chain), units)}`,
  }));
  if (options.length === 0) return [];
  return [
    {
      id: 'open-out',
      title: 'Mirror the half',
      fields: [choice('about', 'Across this edge', options)],
      submit: 'Open out',
      build: (values) => ({ do: 'open-out', about: text(values, 'about') }),
    },
  ];
};
