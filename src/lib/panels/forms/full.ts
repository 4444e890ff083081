import { mouthOf } from '../../pattern/mouth.ts';
import { outlineOf } from '../../pattern/outline.ts';
import type { FullnessKind } from '../../pattern/types.ts';
import { nameOf, pieceName } from '../../strings/names.ts';
import { formatLength } from '../../strings/units.ts';
import { dartOptions, openDarts } from './finish-dart.ts';
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

const KINDS: readonly (Option & { readonly value: FullnessKind })[] = [
  { value: 'gathers', label: 'gathers' },
  { value: 'ease', label: 'ease' },
  { value: 'tucks', label: 'tucks' },
];

export const fullness: FormMaker = (work, _fabric, units) => {
  const darts = openDarts(work);
  const drawn = work.pieces.flatMap((piece) => piece.fullness ?? []);
  if (darts.length === 0) return [];
  const fields: Field[] = [
    choice('dart', 'Dart', dartOptions(darts)),
    choice('as', 'becomes', KINDS),
    length('before', 'New edge from this far before the opening, clockwise', 30),
    length('after', 'to this far after it', 30),
    { id: 'tucks', label: 'Number of tucks', kind: 'count', value: 3, when: { field: 'as', is: 'tucks' } },
  ];
  const measured = drawn.map((f) => `${nameOf(f.dart)} dart ${formatLength(f.fullness, units)}`).join(', ');
  return [
    {
      id: 'fullness',
      title: 'Leave a dart as fullness at the edge',
      note: measured === '' ? 'No opening is drawn over yet.' : `Fullness so far: ${measured}.`,
      fields,
      submit: 'Draw the new edge',
      build: (values) => {
        const as = KINDS.find((one) => one.value === text(values, 'as'))?.value ?? 'gathers';
        const needed = ['before', 'after', ...(as === 'tucks' ? ['tucks'] : [])];
        const problem = missingNumber(values, needed, fields);
        if (problem !== undefined) return problem;
        const command = {
          do: 'fullness',
          dart: text(values, 'dart'),
          as,
          before: number(values, 'before'),
          after: number(values, 'after'),
        } as const;
        return as === 'tucks' ? { ...command, tucks: number(values, 'tucks') } : command;
      },
    },
  ];
};

export const partAtDarts: FormMaker = (work) => {
  const darts = work.pieces.flatMap((piece) =>
    piece.darts
      .filter((dart) => dart.state === 'working' && !('refused' in mouthOf(piece, dart.id)))
      .map((dart) => ({ piece, dart })),
  );
  if (darts.length < 2) return [];
  const options = dartOptions(darts);
  return [
    {
      id: 'part-at-darts',
      title: 'Cut the front apart along two darts of one bust point',
      fields: [
        choice('one', 'From the edge of', options),
        choice('two', 'over the bust point to the edge of', options, options[1]!.value),
      ],
      submit: 'Cut apart',
      build: (values) => {
        const [one, two] = [text(values, 'one'), text(values, 'two')];
        if (one === two) return 'Two different darts are expected.';
        return { do: 'part-at-darts', darts: [one, two] };
      },
    },
  ];
};

export const smoothSeam: FormMaker = (work, _fabric, units) =>
  work.pieces
    .filter((piece) => outlineOf(piece).some((edge) => edge.role === 'style-line'))
    .flatMap((piece) => {
      const busts = [...new Set(piece.parts.flatMap((part) => Object.keys(part.landmarks)))].filter((id) =>
        id.endsWith('bust-point'),
      );
      if (busts.length === 0) return [];
      const fields = [
        choice(
          'at',
          'At',
          busts.map((value) => ({ value, label: nameOf(value) })),
        ),
        length('reach', 'This far along the seam on either side', 40),
      ];
      const moved = (piece.smoothed ?? []).map((s) => formatLength(s.moved, units)).join(', ');
      return [
        {
          id: `smooth-${piece.id}`,
          title: `Smooth the corner of the seam: ${pieceName(piece.id)}`,
          ...(moved !== '' && { note: `The seam moved by ${moved}.` }),
          fields,
          submit: 'Smooth it',
          build: (values) =>
            missingNumber(values, ['reach'], fields) ?? {
              do: 'smooth-seam',
              piece: piece.id,
              at: text(values, 'at'),
              reach: number(values, 'reach'),
            },
        },
      ];
    });
