import { beginningOf } from '../lessons/drills/begin.ts';
import { drillId, drillLesson, type DrillWords } from '../lessons/drills/lesson.ts';
import { SEEDS } from '../lessons/drills/link.ts';
import { stepNumber } from '../lessons/drills/steps.ts';
import { drillSkill } from '../lessons/drills/skill.ts';
import { newest, type Drill } from '../lessons/drills/types.ts';
import { variantOf } from '../lessons/drills/variant.ts';
import type { CheckSpec } from '../grading/types.ts';
import type { Log } from '../progress/events.ts';
import { drillOfId } from './drill-skills.ts';
import { canFind } from './finds.ts';
import { soughtAs, type Isolating } from './isolate.ts';
import { wasShown, type Chance } from './second-chance.ts';

/** Of some hundred and twenty seeds of a kind one has the wanted place and looks for the mistake, at the wanted scale; so many in a row without do not come about. */
const MOST_SEEDS = 3000;
/** One rung: a nudge where it is needed, and no more. */
const HINTS = 1;
/** More are not looked through for one mistake. */
const MOST_TRIES = 200;

const UNSAID: DrillWords = {
  title: () => '',
  summary: () => '',
  step: () => ({ title: '', text: [], hints: [] }),
};

/** All checks of the steps that are worked in a drill, as its rules have them. */
export const checksOf = (drill: Drill): readonly CheckSpec[] =>
  drillLesson(variantOf(drill), UNSAID).steps.flatMap(({ checks }) => checks);

/** A seed from a text: FNV-1a, 32 bits (Fowler, Noll, Vo; memory), so that the same mistake leads to the same drill everywhere. */
function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return hash % SEEDS;
}

/**
 * The drill for a chance, and its lesson's id. It is another than the one in which the mistake was made, with that one's tolerances, its
 * scale and its cloth, unless only the other cloth lets the mistake be made. One in which the solution was seen is over; then comes the next of the same row. The same log gives the same drill. undefined when
 * none is found, which does not come about for what `isolating` names.
 */
export function secondDrill(
  { mistakes, by, occasion }: Chance & { readonly by: Isolating },
  log: Log,
): { readonly drill: Drill; readonly id: string } | undefined {
  const made = drillOfId(occasion.exercise.id);
  const scale = made && beginningOf(made).scale;
  const step = stepNumber(by.exercise, by.step);
  const rest = { band: made?.band ?? 'usual', hints: HINTS, step } as const;
  const cloths = made?.fabric === 'knit' ? (['knit', 'woven'] as const) : (['woven', 'knit'] as const);
  const first = mistakes[0]!;
  const fits = (drill: Drill): boolean => {
    if (drill.seed === made?.seed && drill.exercise === made.exercise) return false;
    if (scale && beginningOf(drill).scale !== scale) return false;
    if (by.skills.length > 0 && !by.skills.includes(drillSkill(variantOf(drill)))) return false;
    const checks = checksOf(drill);
    return mistakes.every(({ of, code }) => checks.some((spec) => canFind(spec, soughtAs(code, of.skill))));
  };
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const seed = seedOf(`${first.of.id} ${first.code} ${tries}`);
    for (let i = 0; i < MOST_SEEDS; i++) {
      const drill = cloths
        .map((fabric) => newest({ exercise: by.exercise, seed: (seed + i) % SEEDS, fabric, ...rest }))
        .find(fits);
      if (!drill) continue;
      const id = drillId(variantOf(drill));
      if (wasShown(log, id)) break;
      return { drill, id };
    }
  }
  return undefined;
}
