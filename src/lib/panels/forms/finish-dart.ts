import { middleOfDart, sewnDart } from '../../pattern/back-off.ts';
import { distance } from '../../geometry/point.ts';
import { foldsOf } from '../../pattern/folds.ts';
import { finishedDart } from '../../pattern/mouth.ts';
import type { Dart, Fold, Piece } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';
import { madeDart, theMadeDart } from '../../strings/names.ts';
import { formatLength } from '../../strings/units.ts';
import { choice, length, missingNumber, number, text, type FormMaker, type Option } from './form.ts';

/** Darts of the fronts that are open, with their piece; those that are drawn over or closed are left out. */
export const openDarts = (work: Work): readonly { readonly piece: Piece; readonly dart: Dart }[] =>
  work.pieces
    .filter((piece) => !piece.id.includes('@'))
    .flatMap((piece) => piece.darts.map((dart) => ({ piece, dart })))
    .filter(({ piece, dart }) => middleOfDart(piece, dart.id) !== undefined);

export const dartOptions = (darts: readonly { readonly dart: Dart }[]): Option[] =>
  darts.map(({ dart }) => ({ value: dart.id, label: madeDart(dart.id) }));

/** How far the sewn point stands off until something else is typed: an inch, as side darts have it. */
const USUAL = 25.4;

export const backOff: FormMaker = (work, _fabric, units) =>
  openDarts(work).map(({ piece, dart }) => {
    const { tip, mouth } = middleOfDart(piece, dart.id)!;
    const fields = [length('by', 'From the tip, down the middle of the dart', USUAL)];
    const known = finishedDart(piece, dart.id);
    const now = known ? ` Now it stands ${formatLength(known.by, units)} off.` : '';
    return {
      id: `back-off-${dart.id}`,
      title: `Sewn point of ${theMadeDart(dart.id)}`,
      note: `The dart is ${formatLength(distance(tip, mouth), units)} deep.${now}`,
      fields,
      submit: 'Draw to the sewn point',
      build: (values) =>
        missingNumber(values, ['by'], fields) ?? { do: 'back-off', dart: dart.id, by: number(values, 'by') },
    };
  });

export const trueLegs: FormMaker = (work, _fabric, units) =>
  openDarts(work).flatMap(({ piece, dart }) => {
    const sewn = sewnDart(piece, dart.id);
    if (!sewn) return [];
    const [a, b] = sewn.legs;
    return [
      {
        id: `true-legs-${dart.id}`,
        title: `Make the legs of ${theMadeDart(dart.id)} equally long`,
        note: `They measure ${formatLength(a, units)} and ${formatLength(b, units)}.`,
        fields: [],
        submit: 'Make them alike',
        build: () => ({ do: 'true-legs', dart: dart.id }) as const,
      },
    ];
  });

const FOLDS: Readonly<Record<Fold, string>> = {
  centre: 'to centre front',
  side: 'to the side',
  down: 'down',
  up: 'up',
};

export const cap: FormMaker = (work) =>
  openDarts(work).map(({ piece, dart }) => {
    const folds = foldsOf(piece, dart.id);
    return {
      id: `cap-${dart.id}`,
      title: `Folded cap of ${theMadeDart(dart.id)}`,
      fields: [
        choice(
          'fold',
          'Folded',
          folds.map((value) => ({ value, label: FOLDS[value] })),
        ),
      ],
      submit: 'Cut the cap',
      build: (values) => ({
        do: 'cap',
        dart: dart.id,
        fold: folds.find((one) => one === text(values, 'fold')) ?? folds[0] ?? 'centre',
      }),
    };
  });
