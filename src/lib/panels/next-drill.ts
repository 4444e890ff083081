import { SEEDS, toFragment } from '../lessons/drills/link.ts';
import { nextDrill, outcomesOf, type Candidate } from '../practice/boundary.ts';
import { drillCandidates, drillsOf } from '../practice/drill-skills.ts';
import { drillFor, onlyFor } from '../practice/drills.ts';
import type { SkillId } from '../practice/skills.ts';
import { ownLog } from '../progress/own-log.ts';

/**
 * A fresh drill of a candidate, as the fragment of a link: of the one step that practises `wanted` alone, where there is such a step; undefined when
 * no drill practises the candidate's skill.
 */
export function freshDrill(candidate: Candidate, wanted: SkillId = candidate.skill): string | undefined {
  const [seed = 0] = crypto.getRandomValues(new Uint32Array(1));
  const drill = drillFor(candidate, seed % SEEDS, { fabric: 'woven', hints: 3 });
  return drill && toFragment(onlyFor(drill, wanted));
}

/**
 * A fresh drill in which a skill is practised, at the boundary of what the learner can do, as the fragment of a link; undefined when no drill practises the
 * skill. Never rejects.
 */
export async function drillOfSkill(skill: SkillId): Promise<string | undefined> {
  const { log } = await ownLog().load();
  const drills = drillsOf(skill);
  const mine = drillCandidates().filter((one) => drills.includes(one.skill));
  const next = nextDrill(mine, outcomesOf(log));
  return next && freshDrill(next, skill);
}
