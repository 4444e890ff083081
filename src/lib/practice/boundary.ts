import type { Log } from '../progress/events.ts';
import { occasionsOf, type Occasion } from './occasions.ts';
import type { SkillId } from './skills.ts';

/*
 * At the boundary of what the learner can do: the drill is chosen that would be got right, without help and at once, about four
 * times in five. The estimate is the Rasch model (G. Rasch, 1960; memory): the odds of success are e^(ability - level), in logits, followed online by
 * steps along the surprise, as ratings of players are. The numbers below are ours.
 */

/** The part of drills that should succeed: often enough to go on gladly, seldom enough to learn by it. */
export const TARGET = 0.8;
/** Ability at which a drill of level 0 succeeds at the target: what a beginner is taken to have. */
const START = Math.log(TARGET / (1 - TARGET));
/** Step along the surprise, logits: of the skill itself, and of what all skills share, so that a new skill starts where its sisters are. */
const OWN_STEP = 0.4;
const SHARED_STEP = 0.1;

/** What can be chosen: a skill at a level of difficulty in logits. 0 is the plain drill; each unit more divides the odds by e. */
export interface Candidate {
  readonly skill: SkillId;
  readonly level: number;
}

/** How it went: 1 right at once without help, 0.5 right with help or at a later try, 0 not right or only after seeing it. */
export type Score = 0 | 0.5 | 1;

export interface Outcome extends Candidate {
  readonly score: Score;
}

/** What the learner can do, in logits. */
export interface Ability {
  readonly shared: number;
  readonly own: ReadonlyMap<SkillId, number>;
}

export const BEGINNER: Ability = { shared: START, own: new Map() };

/** The part of tries that would succeed, 0 to 1. */
export function chanceOf({ shared, own }: Ability, { skill, level }: Candidate): number {
  return 1 / (1 + Math.exp(level - shared - (own.get(skill) ?? 0)));
}

/** What is known of the ability after one more outcome. */
export function learnt(ability: Ability, outcome: Outcome): Ability {
  const surprise = outcome.score - chanceOf(ability, outcome);
  const own = new Map(ability.own);
  own.set(outcome.skill, (own.get(outcome.skill) ?? 0) + OWN_STEP * surprise);
  return { shared: ability.shared + SHARED_STEP * surprise, own };
}

export const abilityOf = (outcomes: readonly Outcome[]): Ability => outcomes.reduce(learnt, BEGINNER);

/** The outcomes that a log holds, in order of time. Work that was left unfinished says nothing. A step of a lesson counts as level 0. */
export const outcomesOf = (log: Log): readonly Outcome[] =>
  occasionsOf(log)
    .filter(({ result }) => result !== 'notReady')
    .map((one) => ({ skill: one.skill, level: one.level ?? 0, score: scoreOf(one) }));

function scoreOf({ result, worked, hints, wrong, madeGood }: Occasion): Score {
  if (result !== 'accepted' || worked) return 0;
  return hints > 0 || (wrong > 0 && !madeGood) ? 0.5 : 1;
}

/**
 * Which of the candidates to drill next: one of those that are due, if any are, else of all; among these the one whose chance lies nearest
 * the target, the skill that was practised longest ago where two are alike. undefined when there are none. Pure: the same history
 * gives the same drill.
 */
export function nextDrill(
  candidates: readonly Candidate[],
  outcomes: readonly Outcome[],
  due: ReadonlySet<SkillId> = new Set(),
): Candidate | undefined {
  const ability = abilityOf(outcomes);
  const wanted = candidates.filter(({ skill }) => due.has(skill));
  const last = new Map(outcomes.map(({ skill }, i) => [skill, i]));
  const off = (one: Candidate) => Math.abs(chanceOf(ability, one) - TARGET);
  const age = (one: Candidate) => last.get(one.skill) ?? -1;
  return [...(wanted.length > 0 ? wanted : candidates)].sort(
    // Chances that differ by less than a hundredth are alike.
    (a, b) => Math.round(100 * off(a)) - Math.round(100 * off(b)) || age(a) - age(b) || order(a, b),
  )[0];
}

const order = (a: Candidate, b: Candidate): number =>
  a.skill < b.skill ? -1 : a.skill > b.skill ? 1 : a.level - b.level;
