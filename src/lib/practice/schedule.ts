import {
  createEmptyCard,
  forgetting_curve,
  FSRS,
  Rating as Grade,
  type Card,
  type Grade as Given,
} from 'ts-fsrs';
import type { Log } from '../progress/events.ts';
import { occasionsOf, type Occasion } from './occasions.ts';
import { widerSkill } from './known-skills.ts';
import { ratingOf, usualTime, type Rating } from './rating.ts';
import type { SkillId } from './skills.ts';

/**
 * The library's own defaults but for these. No chance in the intervals: two devices with the same history say the same. No steps of
 * minutes: a hand skill comes again on another day. A year at the longest is ours.
 */
const scheduler = new FSRS({ enable_fuzz: false, enable_short_term: false, maximum_interval: 365 });

const DAY = 24 * 60 * 60 * 1000;

const GRADES: Readonly<Record<Rating, Given>> = {
  again: Grade.Again,
  hard: Grade.Hard,
  good: Grade.Good,
  easy: Grade.Easy,
};

/** Where a skill stands. Worked out from what happened, never stored or merged. */
export interface SkillState {
  readonly skill: SkillId;
  /** When it is to be practised again, ms. */
  readonly due: number;
  /** Days after which it would still be right 9 times in 10. */
  readonly stability: number;
  /** 1 to 10, as the library counts. */
  readonly difficulty: number;
  /** Every rated occasion in order of time, the newest last. */
  readonly occasions: readonly RatedOccasion[];
}
export interface RatedOccasion {
  readonly occasion: Occasion;
  readonly rating: Rating;
}

/**
 * Where every practised skill stands: a fold over what happened, in order of time. Pure: no clock is read. Skills without a rated
 * occasion are not in it. What is practised at a wider place (in drills) counts for a narrower one of lessons, too, once that was practised.
 */
export function skillStates(log: Log): ReadonlyMap<SkillId, SkillState> {
  const cards = new Map<SkillId, Card>();
  const states = new Map<SkillId, SkillState>();
  const times = new Map<string, number[]>();
  for (const occasion of occasionsOf(log)) {
    const { skill, exercise, at, seconds } = occasion;
    // A drill and a step of a lesson take different times.
    const pace = `${exercise.kind} ${skill}`;
    const before = times.get(pace) ?? [];
    const rating = ratingOf(occasion, usualTime(before));
    if (!rating) continue;
    if (occasion.result === 'accepted' && occasion.hints === 0 && !occasion.worked)
      times.set(pace, [...before, seconds]);
    const narrower = [...cards.keys()].filter((one) => widerSkill(one) === skill);
    for (const practised of [skill, ...narrower]) {
      const { card } = scheduler.next(cards.get(practised) ?? createEmptyCard(at), at, GRADES[rating]);
      cards.set(practised, card);
      states.set(practised, {
        skill: practised,
        due: card.due.getTime(),
        stability: card.stability,
        difficulty: card.difficulty,
        occasions: [...(states.get(practised)?.occasions ?? []), { occasion, rating }],
      });
    }
  }
  return states;
}

/** The last rated occasion of a skill. */
export const lastOf = (state: SkillState): RatedOccasion => state.occasions.at(-1)!;

/** The part of times (0 to 1) that it would be got right at `now` (ms), by the library's forgetting curve. */
export function recallAt(state: SkillState, now: number): number {
  const days = Math.max(0, now - lastOf(state).occasion.at) / DAY;
  return forgetting_curve(scheduler.parameters.w, days, state.stability);
}
