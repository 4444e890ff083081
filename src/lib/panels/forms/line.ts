import { formatLength } from '../../strings/units.ts';
import { chainLength } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { lineOf } from '../../machines/scene.ts';
import { thereOf } from '../../machines/tools/seam.ts';
import { dartTip } from '../../pattern/connector.ts';
import type { Work } from '../../recipe/types.ts';
import { nameOf } from '../../strings/names.ts';
import {
  choice,
  length,
  missingNumber,
  number,
  text,
  type Field,
  type FormMaker,
  type Option,
} from './form.ts';

const lineDarts: readonly Option[] = [
  { value: 'right', label: "the wearer's right dart" },
  { value: 'left', label: "the wearer's left dart" },
];

const frontOf = (work: Work) => work.pieces.find((piece) => piece.id === 'front');

/** The next free notch id: `n1`, `n2` ... */
export function nextNotch(work: Work): string {
  const used = new Set(
    work.pieces.flatMap((piece) => [
      ...piece.notches.map((notch) => notch.id),
      ...piece.parts.flatMap((part) => part.lines.flatMap((line) => line.notches.map((notch) => notch.id))),
    ]),
  );
  let n = 1;
  while (used.has(`n${n}`)) n++;
  return `n${n}`;
}

export const notch: FormMaker = (work, _fabric, units) => {
  const line = lineOf(work);
  if (!line) return [];
  const whole = chainLength(line.chain);
  const fields = [
    { ...length('at', `From the line's start (it is ${formatLength(whole, units)} long)`), value: '' },
  ];
  return [
    {
      id: 'notch',
      title: 'Mark a notch across the line',
      fields,
      submit: 'Mark the notch',
      build: (values) => {
        const at = number(values, 'at');
        if (at <= 0 || at >= whole) return 'The notch has to lie between the two ends of the line.';
        return (
          missingNumber(values, ['at'], fields) ?? {
            do: 'notch',
            id: nextNotch(work),
            line: line.id,
            at: at / whole,
          }
        );
      },
    },
  ];
};

export const removeNotch: FormMaker = (work, _fabric, units) => {
  const notches = work.pieces.flatMap((piece) =>
    piece.parts.flatMap((part) => part.lines.flatMap((line) => line.notches)),
  );
  if (notches.length === 0) return [];
  const options = notches.map(({ id, at }) => ({
    value: id,
    label: `${id}, ${formatLength(at, units)} from the start`,
  }));
  return [
    {
      id: 'remove-notch',
      title: 'Take a notch away',
      fields: [choice('id', 'Notch', options)],
      submit: 'Take it away',
      build: (values) => ({ do: 'remove-notch', id: text(values, 'id') }),
    },
  ];
};

export const extendDart: FormMaker = (work) => {
  const darts = frontOf(work)?.darts ?? [];
  if (darts.length === 0) return [];
  return darts.map((dart) => {
    const fields = [
      length('dx', "From the bust point, + to the wearer's left"),
      length('dy', 'From the bust point, + downwards'),
    ];
    return {
      id: `extend-${dart.id}`,
      title: `Take both legs of the ${nameOf(dart.id)} dart up to a point`,
      note: 'Both boxes at 0 is the bust point itself.',
      fields,
      submit: 'Draw the legs',
      build: (values) =>
        missingNumber(values, ['dx', 'dy'], fields) ?? {
          do: 'extend-dart',
          dart: dart.id,
          to: { landmark: dart.bustPoint, dx: number(values, 'dx'), dy: number(values, 'dy') },
        },
    };
  });
};

export const connect: FormMaker = (work, _fabric, units) => {
  const line = lineOf(work);
  const front = frontOf(work);
  if (!line || !front) return [];
  const whole = chainLength(line.chain);
  return front.darts.map((dart) => {
    const fields: Field[] = [
      choice('how', 'Foot', [
        { value: 'typed', label: 'at a typed distance along the line' },
        { value: 'square', label: 'where it meets the line squarely' },
      ]),
      {
        ...length('at', `Foot, from the line's start (${formatLength(whole, units)} long)`),
        value: '',
        when: { field: 'how', is: 'typed' },
      },
    ];
    const bust = front.parts.map((part) => part.landmarks[dart.bustPoint]).find((p) => p !== undefined);
    const tip = dartTip(front, dart.id);
    const marks = bust
      ? line.points.map(
          (p) =>
            `${formatLength(nearestOnChain(line.chain, p).length, units)} → ${formatLength(distance(p, bust), units)}`,
        )
      : [];
    return {
      id: `connect-${dart.id}`,
      title: `Connector from the ${dart.side} bust point to the line`,
      note: `Distance to this bust point along the line: ${marks.join('; ')}.`,
      fields,
      submit: 'Draw the connector',
      build: (values) => {
        const made = { do: 'connect', dart: dart.id, line: line.id } as const;
        if (text(values, 'how') === 'square' && tip)
          return { ...made, at: nearestOnChain(line.chain, tip).length / whole, square: true };
        return missingNumber(values, ['at'], fields) ?? { ...made, at: number(values, 'at') / whole };
      },
    };
  });
};

export const slash: FormMaker = (work) => {
  const line = lineOf(work);
  if (!line) return [];
  const fields = [
    choice(
      'dart',
      'Up to the tip of',
      lineDarts.filter(({ value }) => thereOf([value], work).length > 0),
    ),
    choice('from', 'Cut in from', [
      { value: 'start', label: `the line's start (${nameOf(line.ends[0] ?? 'no edge')})` },
      { value: 'end', label: `the line's end (${nameOf(line.ends[1] ?? 'no edge')})` },
      { value: 'line', label: 'the line, already cut apart: only the connector' },
    ]),
    length('past', 'Past the tip (0 stops at it, − stops short)'),
  ];
  return [
    {
      id: 'slash',
      title: 'Slash along the line and the connector',
      fields,
      submit: 'Slash',
      build: (values) => {
        const problem = missingNumber(values, ['past'], fields);
        if (problem) return problem;
        const from = text(values, 'from');
        const command = {
          do: 'slash',
          dart: text(values, 'dart'),
          line: line.id,
          past: number(values, 'past'),
        } as const;
        return from === 'line' ? command : { ...command, from: from === 'start' ? 'start' : 'end' };
      },
    },
  ];
};

export const separate: FormMaker = (work) => {
  const line = lineOf(work);
  if (!line || !frontOf(work)) return [];
  return [
    {
      id: 'separate',
      title: 'Cut the pieces apart along the rest of the line',
      fields: [],
      submit: 'Cut apart',
      build: () => ({ do: 'separate', line: line.id }),
    },
  ];
};

/** Pieces that were cut apart along a line; where darts are moved without one, the front itself, or what it was parted into. */
export const overlay: FormMaker = (work) =>
  work.pieces
    .filter(({ id }) => (lineOf(work) ? /^(upper|lower)/ : /^front/).test(id) && work.opened)
    .map((piece) => ({
      id: `overlay-${piece.id}`,
      title: `Close and overlay: ${piece.id.replace('@', ', copy for ')}`,
      fields: [],
      submit: 'Lay it on the block',
      build: () => ({ do: 'overlay', piece: piece.id }) as const,
    }));
