import { always, type KindWords, type StepWords } from './kind-words.ts';
import { capital, dartsOf, lineLines, scaleNote } from './measured.ts';
import { WORKING_DART } from './moving.ts';

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
  hints: [
    {
      codes: [
        'line-ends/drawn',
        'line-ends/start',
        'line-ends/end',
        'line-ends/start-place',
        'line-ends/end-place',
      ],
      rungs: [
        'From which edge to which does the line run, and where on them does it begin and end?',
        'Both ends have their place in the exercise. Mind the scale of the lengths.',
        'Type the two ends along their edges, and leave one point between them.',
      ],
    },
    {
      codes: [
        'line-shape/inside',
        'line-shape/crosses-itself',
        'line-shape/meets-dart',
        'line-shape/kink',
        'line-shape/radius',
      ],
      rungs: [
        'Look along the line: is it one smooth curve that stays on the paper?',
        'Three points are enough for a curve like this one.',
        'Take points away until only the two ends and one beside the bust point are left.',
      ],
    },
    {
      codes: [],
      rungs: [
        'How near does the line pass to the bust point, and on which side?',
        'It passes on the side of centre front, and towards the shoulder it only moves away.',
        'Move the middle point until the distance lies between the two lengths of the exercise.',
      ],
    },
  ],
};

const connector: StepWords = {
  title: 'Draw the connector',
  text: () => ['Draw the connector: straight from the bust point to the style line, by the shortest way.'],
  hints: always(
    'Could the connector be shorter than it is?',
    'The shortest one stands square to the line.',
    'Slide the foot along the line until the reading stops falling.',
  ),
};

const moveAlong: StepWords = {
  title: 'Move the dart into the line',
  text: () => [
    'Cut from the shoulder along the line to the foot of the connector, turn off there, and cut up to the bust',
    'point. Turn the freed part until the legs of the side dart meet.',
    '',
    'What opens at the foot is the leftover: twice the distance, times the sine of half the angle.',
  ],
  hints: always(
    'Look at the side dart: do its legs meet, and do their tips?',
    'Cut from the shoulder along the line to the foot, up the connector, and stop in the bust point.',
    'Turn the freed part about the bust point, not about the foot, until the legs meet.',
  ),
};

const separate: StepWords = {
  title: 'Cut the pieces apart',
  text: () => [
    'Cut the rest of the line. The front is two pieces now.',
    '',
    'Lay both on the block: each rigid part lies where it always did.',
  ],
  hints: always(
    'Are there two pieces, and do both lie on the block?',
    'The rest of the line is cut; then each piece is laid on the block.',
    'Take the tool that separates, then lay the upper piece on the block and the lower one.',
  ),
};

export const LINE_WORDS: KindWords = {
  title: (v) => `${capital(dartsOf(v))} into a line beside the bust point`,
  method: () => 'A style line passes beside the bust point, and the dart goes into it by a connector.',
  where: lineLines,
  steps: {
    'style-line': styleLine,
    'working-dart': WORKING_DART,
    connector,
    'move-along': moveAlong,
    separate,
  },
};
