import type { DrillStepId, DrillWords } from '../lessons/drills/lesson.ts';
import type { Variant } from '../lessons/drills/types.ts';
import {
  capText,
  fillText,
  finishLine,
  linesText,
  partText,
  sewnPointText,
  trueLegsText,
  smoothText,
} from './drill-words/finishing.ts';
import { LADDERS } from './drill-words/hints.ts';
import {
  dartsOf,
  EDGES,
  edgeOf,
  goalLine,
  lineLines,
  middleLine,
  measured,
  scaleNote,
} from './drill-words/measured.ts';
import { title } from './drill-words/titles.ts';
import { decimal, type Units } from './units.ts';

const several = (v: Variant): boolean => v.goals.length > 1;
const both = (v: Variant): boolean => v.darts.length > 1;

const METHOD: Readonly<Record<Variant['drill']['exercise'], string>> = {
  slash: 'Slash and spread.',
  pivot: 'Pin the block at the bust point, swing it, and trace it in two parts. No paper is cut.',
  angle: 'Read the angle of the dart first, and turn by the typed angle.',
  split: 'Two slashes share the dart.',
  join: 'Both darts go into one opening.',
  finish: 'Back the dart off and draw its cap.',
  fullness: 'Bring the angle to an edge, and leave it there without a dart.',
  parallel: 'Two darts side by side, each over an alternate pivot.',
  several: 'A group of darts shares the angle.',
  princess: 'The darts vanish in a seam over the bust point.',
  line: 'A style line passes beside the bust point, and the dart goes into it by a connector.',
};

function summary(v: Variant, units: Units): string {
  const where = v.line
    ? lineLines(v, units)
    : v.row
      ? [middleLine(v, units), `From line to line: ${measured(v, v.row.spacing, units)}.`]
      : v.goals.map((goal) => goalLine(v, goal, units));
  return [METHOD[v.drill.exercise], ...where, finishLine(v, units)].filter((text) => text !== '').join(' ');
}

function workingText(v: Variant): readonly string[] {
  const darts = v.smooth === undefined ? dartsOf(v) : 'side dart and the waist dart';
  return [
    `Draw the ${darts} up to the bust point, both legs.`,
    '',
    'A dart is moved by the bust point, never by the point it is sewn to.',
  ];
}

function moveText(v: Variant): readonly string[] {
  if (v.row)
    return [
      'Cut every slash up to the bust point, and give each the same share of the dart, until nothing is left of it.',
      '',
      'Whatever the lines look like, all paper turns about the bust point.',
    ];
  return [
    several(v)
      ? 'Cut both slashes up to the bust point, and share the dart between them.'
      : `Cut the slash up to the bust point, and turn until nothing is left of the ${v.smooth === undefined ? 'old' : 'side'} dart.`,
    '',
    ...(several(v)
      ? v.goals.map(
          (goal, i) =>
            `- ${decimal(v.shares[i]! * 100, 0)} % of the angle opens at the ${EDGES[goal.place]}.`,
        )
      : []),
    ...(both(v) ? ['Close one dart after the other; both open the same slash.'] : []),
    ...(v.smooth === undefined ? [] : ['The waist dart stays open: the seam will run through it.']),
    ...(v.drill.exercise === 'angle'
      ? ['Type the angle that you read; do not ask for the legs to meet.']
      : []),
  ];
}

function stepText(v: Variant, id: DrillStepId, units: Units): readonly string[] {
  switch (id) {
    case 'working-dart':
      return workingText(v);
    case 'slash-line':
      return [
        several(v) ? 'Draw two slash lines to the bust point.' : 'Draw one slash line to the bust point.',
        '',
        ...v.goals.map((goal) => `- ${goalLine(v, goal, units)}`),
        '',
        scaleNote(v),
      ];
    case 'lines':
      return linesText(v, units);
    case 'move':
      return moveText(v);
    case 'pivot':
      return [
        'Mark where the new dart is to lie:',
        `- ${goalLine(v, v.goals[0]!, units)}`,
        '',
        'Pin the block at the bust point. Trace from the dart round to the mark, swing the block until the',
        'dart’s legs meet, and trace the rest.',
      ];
    case 'sewn-point':
      return sewnPointText(v, units);
    case 'true-legs':
      return trueLegsText;
    case 'cap':
      return capText(v);
    case 'draw-over':
      return fillText(v, units);
    case 'cut-apart':
      return partText(v);
    case 'smooth':
      return smoothText(v, units);
    case 'style-line':
      return [
        'Draw one smooth style line.',
        '',
        ...lineLines(v, units).map((line) => `- ${line}`),
        '',
        'From the place nearest to the bust point up to the shoulder it moves away steadily.',
        scaleNote(v),
      ];
    case 'connector':
      return ['Draw the connector: straight from the bust point to the style line, by the shortest way.'];
    case 'move-along':
      return [
        'Cut from the shoulder along the line to the foot of the connector, turn off there, and cut up to the bust',
        'point. Turn the freed part until the legs of the side dart meet.',
        '',
        'What opens at the foot is the leftover: twice the distance, times the sine of half the angle.',
      ];
    case 'separate':
      return [
        'Cut the rest of the line. The front is two pieces now.',
        '',
        'Lay both on the block: each rigid part lies where it always did.',
      ];
  }
}

const TITLES: Readonly<Record<DrillStepId, string>> = {
  'working-dart': 'Draw the working dart',
  'slash-line': 'Draw the slash line',
  lines: 'Draw the lines',
  move: 'Slash and turn',
  pivot: 'Pin, swing and trace',
  'sewn-point': 'Draw the sewn point',
  'true-legs': 'True the legs',
  cap: 'Cap the dart',
  'draw-over': 'Draw the edge over',
  'cut-apart': 'Cut it apart',
  smooth: 'Smooth the seam',
  'style-line': 'Draw the style line',
  connector: 'Draw the connector',
  'move-along': 'Move the dart into the line',
  separate: 'Cut the pieces apart',
};

const stepTitle = (v: Variant, id: DrillStepId): string => {
  if (id === 'draw-over') return `Draw the ${edgeOf(v)} over`;
  return v.row && id === 'sewn-point' ? 'Draw the sewn points' : TITLES[id];
};

/** The words of drills, with lengths in the learner's units. */
export const drillWords = (units: Units): DrillWords => ({
  title,
  summary: (v) => summary(v, units),
  step: (v, id) => ({ title: stepTitle(v, id), text: stepText(v, id, units), hints: LADDERS[id] }),
});
