import { SEEDS, toFragment } from '../lessons/drills/link.ts';
import { nextDrill, outcomesOf, type Candidate } from '../practice/boundary.ts';
import { drillCandidates } from '../practice/drill-skills.ts';
import { drillFor } from '../practice/drills.ts';
import { dueOn } from '../practice/due.ts';
import { skillStates } from '../practice/schedule.ts';
import type { SkillId } from '../practice/skills.ts';
import { suggest, type Suggestion } from '../practice/suggest.ts';
import { ownLog } from '../progress/own-log.ts';
import { localDay } from './today.ts';

/** A fresh drill of a candidate, as the fragment of a link. */
function fresh(candidate: Candidate): string | undefined {
  const [seed = 0] = crypto.getRandomValues(new Uint32Array(1));
  const drill = drillFor(candidate, seed % SEEDS, { fabric: 'woven', hints: 3 });
  return drill && toFragment(drill);
}

/**
 * A fresh drill of a skill, at the boundary of what the learner can do, as the fragment of a link; undefined when no drill practises the
 * skill. Never rejects.
 */
export async function drillOfSkill(skill: SkillId): Promise<string | undefined> {
  const { log } = await ownLog().load();
  const mine = drillCandidates().filter((one) => one.skill === skill);
  const next = nextDrill(mine, outcomesOf(log));
  return next && fresh(next);
}

/** What the room suggests, and how many skills are due besides. */
export interface Suggested extends Suggestion {
  readonly more: number;
}

/** What to practise next, from all that happened on this device. Never rejects. */
export async function suggestion(now: number): Promise<Suggested> {
  const { log } = await ownLog().load();
  const due = dueOn(skillStates(log).values(), now, localDay);
  const found = suggest(log, due);
  return { ...found, more: due.length - (found.why.kind === 'due' ? 1 : 0) };
}

/** A fresh drill of what was suggested, as the fragment of a link. */
export const drillOf = ({ candidate }: Suggestion): string | undefined => fresh(candidate);
