import { dueOn, nextDue, type Due } from '../practice/due.ts';
import { drillsOf } from '../practice/drill-skills.ts';
import { lastOf, skillStates, type SkillState } from '../practice/schedule.ts';
import type { SkillId } from '../practice/skills.ts';
import { ownLog } from '../progress/own-log.ts';
import type { KeptLog } from '../progress/log-store.ts';
import type { Exercise } from '../progress/events.ts';

/** A lesson as far as links to it need. */
export interface Known {
  readonly id: string;
  /** Step ids. */
  readonly steps: readonly string[];
}

/** Where a skill can be practised again. */
export interface Place {
  readonly exercise: Exercise;
  readonly step: string;
  /** The lesson has such a step today; otherwise it is from an earlier version. */
  readonly known: boolean;
}

export interface Today extends KeptLog {
  readonly states: ReadonlyMap<SkillId, SkillState>;
  /** `drilled`: there are drills in which the skill is practised. */
  readonly due: readonly (Due & { readonly place: Place; readonly drilled: boolean })[];
  /** Days until the next skill comes due; undefined when none has been practised. */
  readonly next: number | undefined;
}

/** Days by the calendar of the place where the device is. */
export function localDay(at: number): number {
  const date = new Date(at);
  return Math.floor(Date.UTC(date.getFullYear(), date.getMonth(), date.getDate()) / 86_400_000);
}

/** What is due now and why, from all that happened. Never rejects. */
export async function today(lessons: readonly Known[], now: number): Promise<Today> {
  const kept = await ownLog().load();
  const states = skillStates(kept.log);
  const next = nextDue(states.values());
  return {
    ...kept,
    states,
    due: dueOn(states.values(), now, localDay).map((one) => ({
      ...one,
      drilled: drillsOf(one.skill).length > 0,
      place: placeOf(states.get(one.skill)!, lessons),
    })),
    next: next === undefined ? undefined : Math.max(0, localDay(next) - localDay(now)),
  };
}

/** The newest place of a skill that there still is, else the newest. */
function placeOf(state: SkillState, lessons: readonly Known[]): Place {
  const places = state.occasions.map(({ occasion: { exercise, step } }) => ({
    exercise,
    step,
    known: isKnown(exercise, step, lessons),
  }));
  const { exercise, step } = lastOf(state).occasion;
  return places.findLast(({ known }) => known) ?? { exercise, step, known: false };
}

/** Whether there is such a lesson with such a step today. A drill makes itself anew from its id. */
export const isKnown = ({ kind, id }: Exercise, step: string, lessons: readonly Known[]): boolean =>
  kind === 'drill' || lessons.some((one) => one.id === id && one.steps.includes(step));
