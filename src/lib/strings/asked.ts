import type { CheckSpec } from '../grading/types.ts';
import type { LessonStep } from '../lessons/types.ts';
import { allowanceLines, labelLines, leftoverLines, walkedLines } from './asked-finish.ts';
import { ids, joined, numbersOf, percent, span, the } from './asked-words.ts';
import { nameOf, pieceName, theDart, theMadeDart } from './names.ts';
import { formatLength, type Units } from './units.ts';

/** What a check asks for, in sentences that do not say how. */
export type Asked = (spec: CheckSpec, units: Units, step: LessonStep) => readonly string[];

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six'] as const;
const counted = (n: number): string => COUNTS[n] ?? String(n);
const darts = (spec: CheckSpec): string => joined(ids(spec, 'darts').map(theMadeDart));
const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
const places = (edges: readonly string[]): string => joined([...new Set(edges)].map(the));

/** One sentence for each run of slashes that begin in the same part of the same edge. */
function slashes(spec: CheckSpec): readonly string[] {
  const edges = ids(spec, 'edges');
  const [from, busts] = [ids(spec, 'from'), ids(spec, 'bust')];
  const told = edges.map((edge, i) => {
    const { least, most } = numbersOf(spec, i);
    const bust = nameOf(busts[i] ?? busts[0] ?? 'bust-point');
    const place = least === most ? percent(least!) : `${percent(least!)} to ${percent(most!)}`;
    const way = `counted from the ${nameOf(from[i] ?? from[0]!)}`;
    return `from ${the(edge)} to the ${bust}, beginning at ${place} of the length of the edge, ${way}.`;
  });
  return [...new Set(told)].map((line) => {
    const count = told.filter((one) => one === line).length;
    return count === 1 ? `A slash line ${line}` : `${capital(counted(count))} slash lines ${line}`;
  });
}

function several(spec: CheckSpec, units: Units): readonly string[] {
  const { near, far, count } = spec.numbers ?? {};
  const lines = `${capital(counted(count ?? 0))} lines, each ${span(spec, units)} along the edge from its neighbour.`;
  if (near === undefined || far === undefined) return [lines];
  const pivot = `${formatLength(near, units)} to ${formatLength(far, units)}`;
  return [lines, `They are parallel, and each bends at an alternate pivot ${pivot} from the bust point.`];
}

function moved(spec: CheckSpec): readonly string[] {
  const edges = ids(spec, 'edges');
  const shares = edges.map((_, i) => spec.numbers?.[`share-${i + 1}`]);
  const plural = ids(spec, 'darts').length > 1;
  const closed = `${capital(darts(spec))} ${plural ? 'are' : 'is'} closed round the bust point`;
  if (edges.length === 1) return [`${closed}; the opening is in ${places(edges)}.`];
  if (shares.every((share) => share === undefined))
    return [`${closed}; ${counted(edges.length)} openings of the same angle are in ${places(edges)}.`];
  const parts = edges.map((edge, i) => `${percent(shares[i]!)} in ${the(edge)}`);
  return [`${closed}; the angle is shared, ${joined(parts)}.`];
}

const FOLDS: Readonly<Record<string, string>> = {
  centre: 'towards centre front',
  side: 'towards the side',
  up: 'up',
  down: 'down',
};

function finished(spec: CheckSpec, units: Units): readonly string[] {
  const [named, edges, fold] = [ids(spec, 'darts'), ids(spec, 'edges'), ids(spec, 'fold')[0]];
  const { step, 'most-step': most } = spec.numbers ?? {};
  // A step that leaves the point to the one before asks nothing of it.
  const asks = spec.tolerances?.['point'] !== undefined;
  const points = !asks
    ? []
    : named.length > 0
      ? named.map(
          (dart, i) => `${capital(theMadeDart(dart))} ends ${span(spec, units, i)} short of the bust point.`,
        )
      : [
          `The ${counted(edges.length)} darts at ${places(edges)} end ${span(spec, units)} short of what they aim at.`,
        ];
  return [
    ...points,
    ...(step === undefined
      ? []
      : [
          `Their points stand in a slanting row: each ${formatLength(step, units)} to ${formatLength(most!, units)} further back than its neighbour.`,
        ]),
    ...(spec.tolerances?.['legs'] ? ['The two legs of each dart are equally long.'] : []),
    ...(fold === undefined
      ? []
      : [
          `${asks ? 'Its cap' : `The cap of ${named[0] ? theMadeDart(named[0]) : `the dart at ${places(edges)}`}`} is drawn, for a dart that is folded ${FOLDS[fold] ?? fold}.`,
        ]),
  ];
}

function princess(spec: CheckSpec, units: Units): readonly string[] {
  if (ids(spec, 'smooth').length > 0)
    return [
      `Both edges are smoothed at the bust point, and leave the corner by no more than ${formatLength(spec.numbers!['most']!, units)}.`,
    ];
  return [
    'The front is parted through the bust point into a centre piece and a side piece; above the bust point and below it their edges are equally long.',
  ];
}

const FILLED: Readonly<Record<string, string>> = {
  gathers: 'left to be gathered',
  tucks: 'laid in tucks',
  ease: 'left to be eased in',
};

function fullness(spec: CheckSpec, units: Units): readonly string[] {
  const numbers = spec.numbers ?? {};
  const as = ids(spec, 'as')[0] ?? '';
  const { 'least-tucks': few, 'most-tucks': many, 'limit-knit': knit, 'limit-woven': woven } = numbers;
  return [
    `The opening in ${places(ids(spec, 'edge'))} is ${FILLED[as] ?? as}; its new edge is smooth and reaches over the old one by ${span(spec, units)} on either side, with a notch at both ends.`,
    ...(few === undefined ? [] : [`${few} to ${many} tucks.`]),
    ...(knit === undefined
      ? []
      : [
          `By the teacher’s setting a knit eases ${formatLength(knit, units)} at most, a woven cloth ${formatLength(woven!, units)}.`,
        ]),
  ];
}

const READ: Readonly<Record<string, string>> = {
  'dart-angle': 'the angle',
  'leg-length': 'the length of a leg',
  intake: 'the intake',
};

function passes(spec: CheckSpec, units: Units): readonly string[] {
  const [one, two] = [ids(spec, 'toStart')[0] ?? '', ids(spec, 'toEnd')[0]];
  const off = `${span(spec, units)} off`;
  return two === undefined
    ? [
        `It passes ${the(one)} on the side of centre front, ${off}, and from there moves away from it steadily, towards the end at which that dart is to open.`,
      ]
    : [
        `It passes both bust points ${off}: ${the(one)} lies on the lower piece, ${the(two)} on the upper one.`,
        'From there it moves away from each steadily, towards the end at which that dart is to open.',
      ];
}

function notches(spec: CheckSpec, units: Units): readonly string[] {
  const { asymmetry, count } = spec.numbers ?? {};
  return [
    `A notch on either side of each place of the line that is nearest to a bust point, ${span(spec, units)} from it; at most ${counted(count ?? 0)} in all.`,
    `Turned end for end, the row of notches differs from itself by ${formatLength(asymmetry ?? 0, units)} or more, so that the seam cannot be sewn upside down.`,
  ];
}

/** By the name of a check. */
export const ASKED: Readonly<Record<string, Asked>> = {
  'landmarks-found': (spec, units) => {
    const clear = spec.numbers?.['clear'];
    return [
      `Found and named: ${joined(ids(spec, 'what').map(the))}.`,
      ...(clear === undefined
        ? []
        : [`An edge or a leg is pointed at ${formatLength(clear, units)} from its ends or farther.`]),
    ];
  },
  readings: (spec) => [
    `The numbers of ${theDart(ids(spec, 'dart')[0] ?? 'right')} are read: ${joined(ids(spec, 'what').map((what) => READ[what] ?? what))}.`,
  ],
  'opened-out': () => ['The whole front lies on the table, its halves mirror images across centre front.'],
  'darts-extended': (spec) => [
    `${capital(darts(spec))} ${ids(spec, 'darts').length > 1 ? 'are working darts: their' : 'is a working dart: its'} legs run to the bust point.`,
  ],
  'slash-drawn': slashes,
  'slashes-laid': several,
  'dart-moved': moved,
  'dart-finished': finished,
  overlaid: (spec) => [
    `${ids(spec, 'pieces').length > 1 ? 'Both pieces lie' : 'The front, its darts closed, lies'} on the block, every part edge on edge where it came from.`,
  ],
  'angle-kept': () => ['The angles round each bust point add up to what they were on the block.'],
  princess,
  fullness,
  'seam-notches': (spec, units) => [
    `Three pairs of notches on the seam: at the bust point, and on either side of it ${span(spec, units)} away.`,
  ],
  'line-ends': (spec) => [
    `The style line runs from ${the(ids(spec, 'start')[0]!)} to ${the(ids(spec, 'end')[0]!)}.`,
  ],
  'line-shape': (spec, units) => [
    `It can be cut and sewn: inside the paper, without a kink, nowhere tighter than a radius of ${formatLength(spec.numbers!['radius']!, units)}.`,
  ],
  'line-passes': passes,
  'notches-placed': notches,
  connectors: (spec) => [
    `From the point of ${joined(ids(spec, 'darts').map(theDart))} a connector runs to the style line, as short as it can be.`,
  ],
  'dart-closed': (spec) => [
    `${capital(theDart(ids(spec, 'dart')[0]!))} is closed round the bust point, by way of its connector; the style line opens at ${the(ids(spec, 'end')[0]!)}.`,
  ],
  separated: (spec) => [
    `The front is two pieces along the style line: ${joined(ids(spec, 'pieces').map((id) => `the ${pieceName(id)}`))}.`,
  ],
  leftover: leftoverLines,
  sliver: () => ['Laid on the block, the pieces differ from it only where the leftover was treated.'],
  allowances: allowanceLines,
  labels: labelLines,
  grain: () => ['Each piece has one grainline, along the centre front of the part that kept its grain.'],
  walked: walkedLines,
};

/** What a step asks for, by its checks and their numbers: what is to be there in the end, not how one comes to it. */
export const askedOf = (step: LessonStep, units: Units): readonly string[] =>
  step.checks.flatMap((spec) => ASKED[spec.check]?.(spec, units, step) ?? []);
