import type { ExerciseId } from '../lessons/drills/types.ts';
import type { Log } from '../progress/events.ts';
import { abilityOf, chanceOf, nextDrill, outcomesOf, type Candidate } from './boundary.ts';
import { drillCandidates, drillsOf, exerciseOf } from './drill-skills.ts';
import type { Due } from './due.ts';

/** The kinds of drills in the order in which they are offered: of the later ones each asks for what an earlier one gives. Ours. */
const LADDER: readonly ExerciseId[] = [
  'slash',
  'pivot',
  // The angle that is typed has to be read first.
  'block',
  'angle',
  'split',
  'finish',
  'fullness',
  'join',
  'parallel',
  'several',
  'princess',
  'line',
];
/** What everything begins with: the first move of the course. */
const FIRST: Candidate = { skill: 'waist-to-side/slash/plain', level: 0 };

/**
 * Why a drill is suggested: its skill is due, or nothing has been practised yet, or it is new, or it lies at the boundary. `chance`: the part of
 * times that it would be got right at once and without help, 0 to 1.
 */
export type Why =
  { readonly kind: 'due'; readonly due: Due } | { readonly kind: 'first' | 'new' | 'boundary' };

export interface Suggestion {
  readonly candidate: Candidate;
  readonly why: Why;
  readonly chance: number;
}

/**
 * The drill to do next: of the skills that are due the one at the boundary of what the learner can do; when none is due, the one at the
 * boundary among the kinds that are open, which are those that were once got right and the next one. Pure: the same history gives the same.
 */
export function suggest(log: Log, due: readonly Due[]): Suggestion {
  const outcomes = outcomesOf(log);
  const ability = abilityOf(outcomes);
  const all = drillCandidates();
  // A drill of the very skill comes before one that has it in a step.
  const own = due.filter(({ skill }) => exerciseOf(skill));
  const reasons = new Map(
    [...(own.length > 0 ? own : due)]
      .reverse()
      .flatMap((one) => drillsOf(one.skill).map((skill) => [skill, one])),
  );
  const wanted = all.filter(({ skill }) => reasons.has(skill));
  const told = (candidate: Candidate, why: Why): Suggestion => ({
    candidate,
    why,
    chance: chanceOf(ability, candidate),
  });

  const fading = nextDrill(wanted, outcomes);
  if (fading) return told(fading, { kind: 'due', due: reasons.get(fading.skill)! });

  const tried = new Set(outcomes.map(({ skill }) => skill));
  const once = new Set(outcomes.filter(({ score }) => score > 0).map(({ skill }) => exerciseOf(skill)));
  const open = LADDER.slice(0, LADDER.findIndex((kind) => !once.has(kind)) + 1 || LADDER.length);
  const next = nextDrill(
    all.filter(({ skill }) => open.includes(exerciseOf(skill)!)),
    outcomes,
  );
  if (!next || ![...tried].some((skill) => exerciseOf(skill))) return told(FIRST, { kind: 'first' });
  return told(next, { kind: tried.has(next.skill) ? 'boundary' : 'new' });
}
