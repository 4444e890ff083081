import type { Asked } from './asked.ts';
import { ids, joined, the } from './asked-words.ts';
import { pieceName } from './names.ts';
import { formatLength } from './units.ts';

export const leftoverLines: Asked = (spec, units) => {
  const { knitLimit = 0, wovenLimit = 0 } = spec.numbers ?? {};
  const ends = joined(ids(spec, 'seams').map(the));
  return [
    'Each opening in the seam is bridged by a smooth edge, for a knit and on a copy for a stable woven cloth.',
    `What is left over is eased in, up to ${formatLength(knitLimit, units)} for the knit and ${formatLength(wovenLimit, units)} for the woven; what is more is taken out at ${ends}, with the notches marked again and the back trued.`,
  ];
};

export const allowanceLines: Asked = ({ numbers = {} }, units) => {
  const mm = (key: string): string => formatLength(numbers[key] ?? 0, units);
  return [
    `Style line, shoulders and sides: ${mm('knit')} for a knit, ${mm('woven')} for a woven cloth; both partners of a seam alike.`,
    `Neckline and armholes: ${mm('curve')} to ${mm('curveMost')}, or none where they are bound.`,
    `Waist: ${mm('hemLeast')} to ${mm('hemMost')}. Centre back: none on the fold, or the width of a seam.`,
    ...(numbers['centreLeast'] === undefined
      ? []
      : [
          `Halves of the back that were trued each by itself have no fold: ${mm('centreLeast')} or more at their centre.`,
        ]),
    'The ends of the style line are shaped for a seam that is pressed open, and the notches are carried out to the cut line.',
  ];
};

export const labelLines: Asked = (spec) => [
  // The back alone has a half that serves for both.
  ...(spec.names?.['fold'] === undefined
    ? []
    : ['A half of the back whose centre has no allowance says that it is cut on the fold.']),
  `On ${ids(spec, 'pieces')
    .map((id) => `the ${pieceName(id)}`)
    .join(
      ', ',
    )} and the back stands a name of its own, how often it is cut, and which side is up where that matters.`,
];

export const walkedLines: Asked = (spec) => [
  `These seams are walked on the seam line, and what was found is said: ${joined(ids(spec, 'seams').map(the))}.`,
];
