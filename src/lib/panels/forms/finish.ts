import { formatLength, type Units } from '../../strings/units.ts';
import { TRUED } from '../../machines/tools/leftover.ts';
import { thereOf } from '../../machines/tools/seam.ts';
import { openings } from '../../pattern/openings.ts';
import type { Piece } from '../../pattern/types.ts';
import type { Command, Work } from '../../recipe/types.ts';
import { nameOf, pieceName } from '../../strings/names.ts';
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

const isCutPiece = (piece: Piece): boolean => /^(upper|lower)/.test(piece.id);
const cutPieces = (work: Work): readonly Piece[] => work.pieces.filter(isCutPiece);
/** The dart whose connector opened in the seam edge of this piece. */
const dartOf = (piece: Piece): string => piece.hinges[0]?.dart ?? piece.darts[0]?.id ?? '';

export const copy: FormMaker = (work, fabric) =>
  cutPieces(work).length !== 2
    ? []
    : [
        {
          id: 'copy',
          title: 'Copy both pieces, to treat them for the other cloth',
          fields: [
            choice(
              'as',
              'The copy is for',
              [
                { value: 'woven', label: 'a stable woven' },
                { value: 'knit', label: 'a knit' },
              ],
              fabric === 'knit' ? 'woven' : 'knit',
            ),
          ],
          submit: 'Copy',
          build: (values) => ({ do: 'copy', as: text(values, 'as') === 'knit' ? 'knit' : 'woven' }),
        },
      ];

export const bridge: FormMaker = (work, _fabric, units) =>
  cutPieces(work)
    .filter((piece) => piece.hinges.length > 0 && piece.treatments.length === 0)
    .map((piece) => {
      const fields = [
        length('before', 'Blend from this far before the opening', 25),
        length('after', 'to this far after it', 25),
      ];
      const measured = openings(piece)
        .map((opening) => `opening ${formatLength(opening.width, units)}`)
        .join(', ');
      return {
        id: `bridge-${piece.id}`,
        title: `Bridge and blend: ${pieceName(piece.id)}`,
        note: `Measured on the cut edges: ${measured || 'no opening'}.`,
        fields,
        submit: 'Bridge the opening',
        build: (values) =>
          missingNumber(values, ['before', 'after'], fields) ?? {
            do: 'bridge',
            piece: piece.id,
            dart: dartOf(piece),
            before: number(values, 'before'),
            after: number(values, 'after'),
          },
      };
    });

const untreated = (work: Work): readonly Piece[] =>
  cutPieces(work).filter((piece) => piece.treatments.some((treatment) => treatment.kind === 'bridged'));

const seamNotches = (piece: Piece): Option[] =>
  piece.notches
    .filter((notch) => !notch.ghost)
    .map(({ id, edge }) => ({ value: id, label: `${id}, on ${nameOf(edge)}` }));

export const ease: FormMaker = (work, _fabric, units) =>
  untreated(work).map((piece) => ({
    id: `ease-${piece.id}`,
    title: `Ease the excess in: ${pieceName(piece.id)}`,
    note: excessNote(piece, units),
    fields: [
      choice('from', 'Between notch', seamNotches(piece)),
      choice('to', 'and notch', seamNotches(piece)),
    ],
    submit: 'Mark the eased stretch',
    build: (values) => {
      const [from, to] = [text(values, 'from'), text(values, 'to')];
      if (from === to) return 'Two different notches are expected.';
      return { do: 'ease', piece: piece.id, dart: dartOf(piece), from, to };
    },
  }));

export const takeOut: FormMaker = (work, _fabric, units) =>
  untreated(work).map((piece) => {
    const fields: Field[] = [
      choice('end', 'At', [
        { value: 'start', label: 'the shoulder end of the seam' },
        { value: 'end', label: 'the side end of the seam' },
      ]),
      choice('how', 'Take out', [
        { value: 'measured', label: 'the measured excess' },
        { value: 'typed', label: 'a typed amount' },
      ]),
      { ...length('amount', 'Amount'), when: { field: 'how', is: 'typed' } },
    ];
    return {
      id: `take-out-${piece.id}`,
      title: `Take the excess out: ${pieceName(piece.id)}`,
      note: excessNote(piece, units),
      fields,
      submit: 'Trim and redraw the end',
      build: (values) => {
        const typed = text(values, 'how') === 'typed';
        const problem = typed ? missingNumber(values, ['amount'], fields) : undefined;
        if (problem) return problem;
        return {
          do: 'take-out',
          piece: piece.id,
          dart: dartOf(piece),
          end: text(values, 'end') === 'end' ? 'end' : 'start',
          amount: typed ? number(values, 'amount') : 'measured',
        };
      },
    };
  });

function excessNote(piece: Piece, units: Units): string {
  const treatment = piece.treatments[0];
  return treatment ? `Measured excess: ${formatLength(treatment.excess, units)}.` : '';
}

const trimmed = (work: Work): readonly Piece[] =>
  cutPieces(work).filter((piece) => piece.treatments.some((treatment) => treatment.kind === 'trimmed'));

export const trueWithBack: FormMaker = (work) => {
  const pieces = trimmed(work);
  if (pieces.length === 0) return [];
  const copied = pieces.map((piece) => piece.id.split('@')[1]).find((fabric) => fabric !== undefined);
  return [
    {
      id: 'true',
      title: 'True the back to the front as it will be sewn',
      fields: [
        choice(
          'edge',
          'Edge',
          thereOf(TRUED, work).map((edge) => ({ value: edge, label: edge.replace('/', ' ') })),
        ),
      ],
      submit: 'True the back',
      build: (values): Command => {
        const command = { do: 'true', edge: text(values, 'edge') } as const;
        return copied === 'knit' || copied === 'woven' ? { ...command, as: copied } : command;
      },
    },
  ];
};

export const renotch: FormMaker = (work) =>
  trimmed(work).map((piece) => {
    const fields: Field[] = [
      choice('notch', 'Notch', seamNotches(piece)),
      choice('how', 'Place it', [
        { value: 'partner', label: 'as far from the trimmed end as on the partner' },
        { value: 'typed', label: 'at a typed distance from the trimmed end' },
      ]),
      { ...length('at', 'Distance'), when: { field: 'how', is: 'typed' } },
    ];
    return {
      id: `renotch-${piece.id}`,
      title: `Mark a notch again: ${pieceName(piece.id)}`,
      fields,
      submit: 'Mark it again',
      build: (values) => {
        const typed = text(values, 'how') === 'typed';
        const problem = typed ? missingNumber(values, ['at'], fields) : undefined;
        if (problem) return problem;
        const command = { do: 'renotch', piece: piece.id, notch: text(values, 'notch') } as const;
        return typed ? { ...command, at: number(values, 'at') } : command;
      },
    };
  });
