import { BESIDE_FOOT, DIFFERS, EASES } from '../../lessons/drills/rules/line.ts';
import type { KindWords, StepWords } from './kind-words.ts';
import { capital, dartsOf, lineLines, measured, onPaper, scaleNote } from './measured.ts';
import { WORKING_DART } from './working-dart.ts';

const styleLine: StepWords = {
  title: 'Draw the style line',
  text: (v, units) => [
    'Draw one smooth style line.',
    '',
    ...lineLines(v, units).map((line) => `- ${line}`),
    '',
    'From the place nearest to the bust point up to the shoulder it moves away steadily.',
    scaleNote(v),
  ],
};

const notches: StepWords = {
  title: 'Mark the notches',
  text: (v, units) => [
    'Before the line is cut, mark its notches: one above the place nearest to the bust point and one below it,',
    `each ${onPaper(v, BESIDE_FOOT.least, units)} to ${measured(v, BESIDE_FOOT.most, units)} from that place.`,
    '',
    `Seen from the other end of the line the two have to stand otherwise, by ${measured(v, DIFFERS, units)} or more, so that the`,
    'seam cannot be sewn upside down. Between these two the leftover is dealt with later.',
  ],
};

const connector: StepWords = {
  title: 'Draw the connector',
  text: () => ['Draw the connector: straight from the bust point to the style line, by the shortest way.'],
};

const moveAlong: StepWords = {
  title: 'Move the dart into the line',
  text: () => [
    'Cut from the shoulder along the line to the foot of the connector, turn off there, and cut up to the bust',
    'point. Turn the freed part until the legs of the side dart meet.',
    '',
    'What opens at the foot is the leftover: twice the distance, times the sine of half the angle.',
  ],
};

const separate: StepWords = {
  title: 'Cut the pieces apart',
  text: () => [
    'Cut the rest of the line. The front is two pieces now: the table calls the one with centre front the upper',
    'piece, the one with the side seam the lower.',
    '',
    'Lay both on the block: each rigid part lies where it always did.',
  ],
};

const leftover: StepWords = {
  title: 'Decide on the leftover',
  text: (v, units) => [
    'The side piece, the lower one of the table, is longer at the seam than its partner: by the gap at the',
    'foot of the connector.',
    '',
    ...(v.drill.fabric === 'knit'
      ? [
          'This is a knit, and it takes that up. Bridge the gap with a smooth edge, and mark the stretch between the',
          `two notches as eased. By the teacher’s setting of the course it eases ${measured(v, EASES.knit, units)} at most.`,
        ]
      : [
          `This is a stable woven cloth. It eases ${measured(v, EASES.woven, units)} at most; what is more is taken out.`,
          'Bridge the gap with a smooth edge, and take the measured excess out at the shoulder. True the back’s',
          'shoulder with it, and mark the notch above the gap again, from its partner.',
        ]),
  ],
};

export const LINE_WORDS: KindWords = {
  title: (v) => `${capital(dartsOf(v))} into a line beside the bust point`,
  method: () => 'A style line passes beside the bust point, and the dart goes into it by a connector.',
  where: lineLines,
  ending: (v) =>
    v.drill.fabric === 'knit'
      ? 'The leftover is eased into the seam.'
      : 'The leftover is taken out at the shoulder, where the cloth does not ease it.',
  steps: {
    'style-line': styleLine,
    notches,
    'working-dart': WORKING_DART,
    connector,
    'move-along': moveAlong,
    separate,
    leftover,
  },
};
