import type { HintLadder, Lesson, LessonStep } from '../types.ts';
import { toFragment } from './link.ts';
import { cap, fill, sewnPoint, trueLegs } from './rules/finish.ts';
import { connector, moveAlong, separate, styleLine } from './rules/line.ts';
import { move, pivot, slashLine, workingDart } from './rules/move.ts';
import { part, smooth } from './rules/princess.ts';
import { lines } from './rules/row.ts';
import type { Rules } from './rules/rule.ts';
import { stepSkill } from './skill.ts';
import type { ExerciseId, Variant } from './types.ts';

/** The steps that drills are made of. */
export type DrillStepId =
  | 'working-dart'
  | 'slash-line'
  | 'lines'
  | 'move'
  | 'pivot'
  | 'sewn-point'
  | 'true-legs'
  | 'cap'
  | 'draw-over'
  | 'cut-apart'
  | 'smooth'
  | 'style-line'
  | 'connector'
  | 'move-along'
  | 'separate';

/** The words of a drill; they live with the other sentences. */
export interface DrillWords {
  readonly title: (variant: Variant) => string;
  readonly summary: (variant: Variant) => string;
  readonly step: (
    variant: Variant,
    id: DrillStepId,
  ) => { readonly title: string; readonly text: readonly string[]; readonly hints: readonly HintLadder[] };
}

/** Raised when the rules of drills change, so that an older file can be told. */
export const DRILL_CONTENT = 1;

/** The id of a drill's lesson, as attempts and progress name it: `drill-` and its fragment with hyphens. */
export const drillId = (variant: Variant): string =>
  `drill-${toFragment(variant.drill).replaceAll('.', '-')}`;

const RULES: Readonly<Record<DrillStepId, (v: Variant) => Rules>> = {
  'working-dart': workingDart,
  'slash-line': slashLine,
  lines,
  move,
  pivot,
  'sewn-point': sewnPoint,
  'true-legs': trueLegs,
  cap,
  'draw-over': fill,
  'cut-apart': part,
  smooth,
  'style-line': styleLine,
  connector,
  'move-along': moveAlong,
  separate,
};

const MOVING = ['working-dart', 'slash-line', 'move'] as const;

const STEPS: Readonly<Record<ExerciseId, readonly DrillStepId[]>> = {
  slash: MOVING,
  pivot: ['working-dart', 'pivot'],
  angle: MOVING,
  split: MOVING,
  join: MOVING,
  finish: [...MOVING, 'sewn-point', 'cap'],
  fullness: [...MOVING, 'draw-over'],
  parallel: ['working-dart', 'lines', 'move', 'sewn-point', 'true-legs'],
  several: ['working-dart', 'lines', 'move', 'sewn-point'],
  line: ['style-line', 'working-dart', 'connector', 'move-along', 'separate'],
  princess: [...MOVING, 'cut-apart', 'smooth'],
};

/** A dart that stays where it is needs no moving first. */
const stepsOf = (v: Variant): readonly DrillStepId[] =>
  STEPS[v.drill.exercise].filter((id) => v.goals.length > 0 || id === 'sewn-point' || id === 'cap');

/** The drill as a lesson of its own: the same steps, checks and solvers as in the course. Pure. */
export function drillLesson(variant: Variant, words: DrillWords): Lesson {
  const { drill, figure, form } = variant;
  const steps = stepsOf(variant).map((id): LessonStep => {
    const { title, text, hints } = words.step(variant, id);
    const shown = hints.map((ladder) => ({ ...ladder, rungs: ladder.rungs.slice(0, drill.hints) }));
    const ladders = shown.filter(({ rungs }) => rungs.length > 0);
    const skill = stepSkill(variant, id);
    return { id, title, text, hints: ladders, skill, ...RULES[id](variant) };
  });
  return {
    id: drillId(variant),
    title: words.title(variant),
    summary: words.summary(variant),
    content: DRILL_CONTENT,
    figure,
    form,
    fabrics: [drill.fabric],
    needs: [],
    steps,
  };
}
