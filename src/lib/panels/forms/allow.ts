import { isBack } from '../../machines/scene.ts';
import { thereOf } from '../../machines/tools/seam.ts';
import { centreGroup } from '../../pattern/centre.ts';
import { seamGroups } from '../../pattern/outline.ts';
import type { CornerForm, Piece } from '../../pattern/types.ts';
import type { Fabric, Work } from '../../recipe/types.ts';
import { nameOf, pieceName } from '../../strings/names.ts';
import { formatLength, type Units } from '../../strings/units.ts';
import { cutPieces, sewnPieces } from '../pieces.ts';
import {
  angle,
  choice,
  length,
  missingNumber,
  number,
  text,
  type Field,
  type FormMaker,
  type Option,
} from './form.ts';

const INCH = 25.4;

export const cutPiecesFor = (work: Work, fabric: Fabric): readonly Piece[] => cutPieces(work.pieces, fabric);

const groupOptions = (piece: Piece): Option[] =>
  seamGroups(piece).map((group) => ({ value: group.id, label: nameOf(group.id) }));

export const allow: FormMaker = (work, fabric, units) =>
  sewnPieces(work.pieces, fabric).map((piece) => {
    const fields = seamGroups(piece).map((group) => ({
      ...length(group.id, nameOf(group.id)),
      value: piece.allowances[group.id] ?? '',
    }));
    const centre = centreGroup(piece);
    const all: Field[] = [
      choice('group', 'Edge', groupOptions(piece)),
      choice('how', 'Allowance', [
        { value: 'typed', label: 'of a typed width' },
        { value: 'bound', label: 'none: the edge is bound' },
        ...(centre === undefined ? [] : [{ value: 'fold', label: `none: ${nameOf(centre)} on the fold` }]),
      ]),
      { ...length('width', 'Width', (3 / 8) * INCH), when: { field: 'how', is: 'typed' } },
    ];
    const set = fields
      .filter((field) => field.value !== '')
      .map((field) => `${field.label} ${formatLength(Number(field.value), units)}`);
    return {
      id: `allow-${piece.id}`,
      title: `Allowance of an edge: ${pieceName(piece.id)}`,
      note: set.length > 0 ? `So far: ${set.join(', ')}.` : 'No edge has an allowance yet.',
      fields: all,
      submit: 'Set the width',
      build: (values) => {
        const [how, group] = [text(values, 'how'), text(values, 'group')];
        const made = { do: 'allow', piece: piece.id, group } as const;
        if (how === 'fold' && group !== centre) return `Edge: only ${nameOf(centre ?? '')} lies on the fold.`;
        if (how === 'fold' || how === 'bound') return { ...made, width: 0 };
        if (number(values, 'width') < 0) return 'Width: 0 or more is expected.';
        return missingNumber(values, ['width'], all) ?? { ...made, width: number(values, 'width') };
      },
    };
  });

const FORMS: readonly (Option & { readonly value: CornerForm })[] = [
  { value: 'reflect', label: 'mirrored in the seam sewn first, so that it lies flush' },
  { value: 'square', label: 'square to the seam sewn first' },
  { value: 'mitre', label: 'a mitre, both cut lines carried on' },
  { value: 'step', label: 'a step' },
];

export const corner: FormMaker = (work, fabric) =>
  sewnPieces(work.pieces, fabric).map((piece) => {
    const groups = seamGroups(piece);
    const corners = groups.map((group, i) => {
      const after = groups[(i + 1) % groups.length] ?? group;
      return { value: `${group.id}|${after.id}`, label: `${nameOf(group.id)} and ${nameOf(after.id)}` };
    });
    return {
      id: `corner-${piece.id}`,
      title: `Shape a corner: ${pieceName(piece.id)}`,
      fields: [
        choice('corner', 'Corner between', corners),
        choice('form', 'Form', FORMS),
        choice('first', 'Sewn first', [
          { value: 'before', label: 'the first of the two' },
          { value: 'after', label: 'the second of the two' },
        ]),
      ],
      submit: 'Shape the corner',
      build: (values) => {
        const [before = '', after = ''] = text(values, 'corner').split('|');
        const form = FORMS.find((option) => option.value === text(values, 'form'))?.value ?? 'mitre';
        const command = { do: 'corner', piece: piece.id, before, after, form } as const;
        if (form === 'mitre' || form === 'step') return command;
        return { ...command, first: text(values, 'first') === 'before' ? before : after };
      },
    };
  });

export const carryNotches: FormMaker = (work, fabric) =>
  sewnPieces(work.pieces, fabric).map((piece) => ({
    id: `carry-${piece.id}`,
    title: `Carry the notches out to the cut line: ${pieceName(piece.id)}`,
    fields: [],
    submit: 'Carry them out',
    build: () => ({ do: 'carry-notches', piece: piece.id }) as const,
  }));

/** What the centre edge of a piece was given, for whoever says whether it lies on the fold. */
function centreNote(piece: Piece, centre: string, units: Units): string {
  const width = piece.allowances[centre];
  const given = width === undefined ? 'none said yet' : width === 0 ? 'none' : formatLength(width, units);
  return `Allowance at ${nameOf(centre)}: ${given}.`;
}

export const label: FormMaker = (work, fabric, units) =>
  sewnPieces(work.pieces, fabric).map((piece) => {
    const centre = centreGroup(piece);
    const fields: Field[] = [
      { id: 'name', label: 'Name of the piece', kind: 'text', value: piece.label?.name ?? '' },
      { id: 'cut', label: 'Number to cut', kind: 'count', value: piece.label?.cut ?? '' },
      {
        id: 'rightSideUp',
        label: 'Cut with the right side up (RSU)',
        kind: 'check',
        value: piece.label?.rightSideUp ?? false,
      },
      ...(centre === undefined
        ? []
        : [
            {
              id: 'onFold',
              label: `Cut on the fold, ${nameOf(centre)} laid along it`,
              kind: 'check',
              value: piece.label?.onFold ?? false,
            } as const,
          ]),
    ];
    return {
      id: `label-${piece.id}`,
      title: `Label: ${pieceName(piece.id)}`,
      ...(centre !== undefined && { note: centreNote(piece, centre, units) }),
      fields,
      submit: 'Write the label',
      build: (values) => {
        const name = text(values, 'name').trim();
        if (name === '') return 'Name of the piece: a name is expected.';
        return (
          missingNumber(values, ['cut'], fields) ?? {
            do: 'label',
            piece: piece.id,
            name,
            cut: number(values, 'cut'),
            rightSideUp: values.rightSideUp === true,
            ...(values.onFold === true && { onFold: true }),
          }
        );
      },
    };
  });

/** Landmarks that can carry a grainline: they lie on the piece. */
const grainPlaces = (piece: Piece): Option[] => {
  const ids = new Set(piece.parts.flatMap((part) => Object.keys(part.landmarks)));
  return [...ids].map((id) => ({ value: id, label: nameOf(id) }));
};

export const grain: FormMaker = (work, fabric) =>
  sewnPieces(work.pieces, fabric).map((piece) => {
    const fields: Field[] = [
      choice('landmark', 'Through a point measured from', grainPlaces(piece)),
      length('dx', "+ to the wearer's left"),
      length('dy', '+ downwards'),
      angle(
        'angle',
        isBack(piece)
          ? 'Angle to the centre back, + clockwise'
          : 'Angle to the centre front of the part that was not turned, + clockwise',
      ),
    ];
    return {
      id: `grain-${piece.id}`,
      title: `Grainline: ${pieceName(piece.id)}`,
      fields,
      submit: 'Draw the grainline',
      build: (values) =>
        missingNumber(values, ['dx', 'dy', 'angle'], fields) ?? {
          do: 'grain',
          piece: piece.id,
          at: { landmark: text(values, 'landmark'), dx: number(values, 'dx'), dy: number(values, 'dy') },
          angle: number(values, 'angle'),
        },
    };
  });

const SEAMS: readonly Option[] = [
  { value: 'style-line', label: 'style line, upper on lower piece' },
  { value: 'right/shoulder', label: 'right shoulder, front on back' },
  { value: 'left/shoulder', label: 'left shoulder, front on back' },
  { value: 'right/side', label: 'right side, front on back' },
  { value: 'left/side', label: 'left side, front on back' },
];

export const walk: FormMaker = (work, fabric) => {
  if (cutPiecesFor(work, fabric).length < 2) return [];
  const copied = work.pieces.some((piece) => piece.id.endsWith(`@${fabric}`));
  return [
    {
      id: 'walk',
      title: 'Walk a seam',
      fields: [
        choice(
          'seam',
          'Seam',
          SEAMS.filter(({ value }) => thereOf([value], work).length > 0),
        ),
        choice('along', 'Along', [
          { value: 'seam', label: 'the seam line' },
          { value: 'cut', label: 'the cut line' },
        ]),
        choice('says', 'The two sides', [
          { value: 'match', label: 'match' },
          { value: 'eased', label: 'differ by what is eased' },
          { value: 'differs', label: 'differ' },
        ]),
      ],
      submit: 'Record the walk',
      build: (values) => {
        const says = text(values, 'says');
        const command = {
          do: 'walk',
          seam: text(values, 'seam'),
          along: text(values, 'along') === 'cut' ? 'cut' : 'seam',
          says: says === 'eased' || says === 'differs' ? says : 'match',
        } as const;
        return copied ? { ...command, as: fabric } : command;
      },
    },
  ];
};
