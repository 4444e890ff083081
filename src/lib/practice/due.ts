import { lastOf, recallAt, type SkillState } from './schedule.ts';
import type { SkillId } from './skills.ts';

/**
 * Why a skill is due:
 * - `went-wrong`: it was not right in the end, last time;
 * - `shown`: last time it was right only after the worked solution;
 * - `helped`: last time it took hints;
 * - `fading`: it was right by the learner's own hand, and enough time has passed.
 */
export type Reason = 'went-wrong' | 'shown' | 'helped' | 'fading';

export interface Due {
  readonly skill: SkillId;
  readonly reason: Reason;
  /** Days since it was last practised, and days that it has been due, by the days of the calendar. */
  readonly since: number;
  readonly overdue: number;
  /** Part of times that it would be got right now, 0 to 1. */
  readonly recall: number;
  /** Hints that were open last time. */
  readonly hints: number;
}

/** Calendar days of the place where the learner is, from ms: the view knows the time zone. */
export type DayOf = (at: number) => number;

/**
 * What is to be practised today, what fades most first. `now` in ms; whatever becomes due on the day of `now` is due: a person
 * practises by days, not by hours.
 */
export function dueOn(states: Iterable<SkillState>, now: number, dayOf: DayOf): readonly Due[] {
  const today = dayOf(now);
  const due: Due[] = [];
  for (const state of states) {
    const overdue = today - dayOf(state.due);
    if (overdue < 0) continue;
    const { occasion } = lastOf(state);
    due.push({
      skill: state.skill,
      reason: reasonOf(state),
      since: today - dayOf(occasion.at),
      overdue,
      recall: recallAt(state, now),
      hints: occasion.hints,
    });
  }
  return due.sort((a, b) => a.recall - b.recall || (a.skill < b.skill ? -1 : 1));
}

function reasonOf(state: SkillState): Reason {
  const { occasion } = lastOf(state);
  if (occasion.result !== 'accepted') return 'went-wrong';
  if (occasion.worked) return 'shown';
  return occasion.hints > 0 ? 'helped' : 'fading';
}

/** When the next skill comes due, ms; undefined when none has been practised. */
export const nextDue = (states: Iterable<SkillState>): number | undefined => {
  const times = [...states].map(({ due }) => due);
  return times.length > 0 ? Math.min(...times) : undefined;
};
