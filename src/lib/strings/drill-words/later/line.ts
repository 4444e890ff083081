import { BESIDE_FOOT, DIFFERS, EASES } from '../../../lessons/drills/rules/line.ts';
import type { KindWords, StepText } from '../kind-words.ts';
import { LINE_OPENING } from '../line.ts';
import { measured, onPaper } from '../measured.ts';
import { DART_TEXT } from '../working-dart.ts';

const notches: StepText = (v, units) => [
  'Before the line is cut, mark its notches: one above the place nearest to the bust point and one below it,',
  `each ${onPaper(v, BESIDE_FOOT.least, units)} to ${measured(v, BESIDE_FOOT.most, units)} from that place.`,
  '',
  `Seen from the other end of the line the two have to stand otherwise, by ${measured(v, DIFFERS, units)} or more, so that the`,
  'seam cannot be sewn upside down. Between these two the leftover is dealt with later.',
];

const connector: StepText = () => [
  'Draw the connector: straight from the bust point to the style line, by the shortest way.',
];

const moveAlong: StepText = () => [
  'Cut from the shoulder along the line to the foot of the connector, turn off there, and cut up to the bust',
  'point. Turn the freed part until the legs of the side dart meet.',
  '',
  'What opens at the foot is the leftover: twice the distance, times the sine of half the angle.',
];

const separate: StepText = () => [
  'Cut the rest of the line. The front is two pieces now: the table calls the one with centre front the upper',
  'piece, the one with the side seam the lower.',
  '',
  'Lay both on the block: each rigid part lies where it always did.',
];

const leftover: StepText = (v, units) => [
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
];

export const LINE_WORDS: KindWords = {
  ...LINE_OPENING,
  later: { notches, ...DART_TEXT, connector, 'move-along': moveAlong, separate, leftover },
};
