import { drillSkill, stepSkill } from '../lessons/drills/skill.ts';
import { stepNumber, stepsOf } from '../lessons/drills/steps.ts';
import { SEEDS } from '../lessons/drills/link.ts';
import { BANDS, newest, type Band, type Drill } from '../lessons/drills/types.ts';
import { variantOf } from '../lessons/drills/variant.ts';
import type { Candidate } from './boundary.ts';
import { exerciseOf, levelOf } from './drill-skills.ts';
import type { SkillId } from './skills.ts';

/** Of some twenty seeds of an exercise one has the wanted place; so many in a row without it do not come about. */
const MOST_SEEDS = 2000;

/**
 * A drill of a skill at the level nearest to the wanted one: the first seed from `seed` on (a whole number from 0) that makes it. undefined when
 * no exercise practises the skill.
 */
export function drillFor(
  { skill, level }: Candidate,
  seed: number,
  rest: Pick<Drill, 'fabric' | 'hints'>,
): Drill | undefined {
  const exercise = exerciseOf(skill);
  if (!exercise) return undefined;
  const off = (band: Band): number => Math.abs(levelOf({ exercise, band }) - level);
  const band = BANDS.reduce((best, one) => (off(one) < off(best) ? one : best));
  for (let i = 0; i < MOST_SEEDS; i++) {
    const drill = newest({ exercise, seed: (seed + i) % SEEDS, band, ...rest });
    if (drillSkill(variantOf(drill)) === skill) return drill;
  }
  return undefined;
}

/** The drill with nothing to be worked but the step that practises the skill; the drill itself where that practises it as a whole, or no step does. */
export function onlyFor(drill: Drill, skill: SkillId): Drill {
  const variant = variantOf(drill);
  if (drillSkill(variant) === skill) return drill;
  const only = stepsOf(variant).own.find((id) => stepSkill(variant, id) === skill);
  return only ? { ...drill, step: stepNumber(drill.exercise, only) } : drill;
}
