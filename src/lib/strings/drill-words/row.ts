import type { Variant } from '../../lessons/drills/types.ts';
import type { RulerUnits } from '../units.ts';
import type { OpeningWords } from './kind-words.ts';
import { capital, COUNTS, dartsOf, EDGES, edgeOf, from, measured } from './measured.ts';
import { MOVING_TITLES } from './moving.ts';
import { DART_TEXT, DART_TITLE } from './working-dart.ts';

/** Where the middle of a row lies. */
export const middleLine = (v: Variant, units: RulerUnits): string => {
  const goal = v.goals[0]!;
  return `Their middle on the ${EDGES[goal.place]}: ${measured(v, goal.mm, units)} ${from(goal)}.`;
};

export const ROW_OPENING: OpeningWords = {
  title: (v) => {
    const { count, step } = v.row!;
    const several = v.goals[0]!.place === 'neckline' ? 'rays' : step > 0 ? 'graduated darts' : 'darts';
    const group = v.drill.exercise === 'parallel' ? 'parallel darts' : several;
    return `${capital(dartsOf(v))} into ${COUNTS[count]} ${group} at the ${edgeOf(v)}`;
  },
  method: (v) =>
    v.drill.exercise === 'parallel'
      ? 'Two darts side by side, each over an alternate pivot.'
      : 'A group of darts shares the angle.',
  where: (v, units) => [middleLine(v, units), `From line to line: ${measured(v, v.row!.spacing, units)}.`],
  steps: {
    ...DART_TITLE,
    lines: 'Draw the lines',
    move: MOVING_TITLES.move,
    'sewn-point': 'Draw the sewn points',
    'true-legs': 'True the legs',
  },
  first: DART_TEXT,
};
