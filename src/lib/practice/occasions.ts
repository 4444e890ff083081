import type { Exercise, Log, MarkEvent, ProgressEvent } from '../progress/events.ts';
import type { SkillId } from './skills.ts';

/** One go at a step: all marks of it from taking it up until it is right, or until it is left for a while. */
export interface Occasion {
  readonly skill: SkillId;
  readonly exercise: Exercise;
  readonly step: string;
  /** When it was decided, ms: the first acceptance, else the last mark. */
  readonly at: number;
  readonly result: 'accepted' | 'needsWork' | 'notReady';
  /** Marks that found something wrong before the deciding one; unfinished work is not wrong. */
  readonly wrong: number;
  /** Of the deciding mark: largest error in tolerances. */
  readonly error: number | null;
  /** Hints open at the deciding mark; where that was not right, also those that were taken after it. */
  readonly hints: number;
  /** The worked solution was seen at some time in this occasion before it was decided. */
  readonly worked: boolean;
  /** Time at work, s, up to the deciding mark. */
  readonly seconds: number;
  /** Codes of all that was wrong in it, and those of them that were made good by a second chance; in order of the alphabet. */
  readonly mistakes: readonly string[];
  readonly restored: readonly string[];
  /** Every mistake in it was made good by a second chance. */
  readonly madeGood: boolean;
  readonly level: number | null;
  readonly marks: readonly MarkEvent[];
}

/** So long after the last mark a step counts as taken up anew, ms. Ours: shorter than an evening, longer than a pause. */
export const PAUSE = 60 * 60 * 1000;

const keyOf = ({ exercise, step }: ProgressEvent): string => `${exercise.kind} ${exercise.id} ${step}`;

/**
 * What happened, put together into occasions, in the order in which they were decided. Pure: the same log gives the same
 * occasions, whichever devices it came from. Marks after the acceptance belong to the occasion and change nothing: checking again what
 * is right is no practice. An occasion in which nothing was marked is none.
 */
export function occasionsOf(log: Log): readonly Occasion[] {
  const open = new Map<string, ProgressEvent[]>();
  const groups: ProgressEvent[][] = [];
  const restored = new Map<string, string[]>();
  for (const event of log) {
    if (event.kind === 'credit') {
      restored.set(event.of, [...(restored.get(event.of) ?? []), event.code]);
      continue;
    }
    const key = keyOf(event);
    const group = open.get(key);
    const last = group?.at(-1);
    if (group && last && event.at - last.at <= PAUSE) group.push(event);
    else {
      const fresh = [event];
      open.set(key, fresh);
      groups.push(fresh);
    }
  }
  return groups
    .flatMap((group) => occasion(group, restored) ?? [])
    .map((one, i) => ({ one, i }))
    .sort((a, b) => a.one.at - b.one.at || a.i - b.i)
    .map(({ one }) => one);
}

function occasion(
  group: readonly ProgressEvent[],
  restored: ReadonlyMap<string, readonly string[]>,
): Occasion | undefined {
  const marks = group.filter((event) => event.kind === 'mark');
  const accepted = marks.findIndex(({ verdict }) => verdict === 'accepted');
  const until = marks.slice(0, accepted < 0 ? undefined : accepted + 1);
  const deciding = until.at(-1);
  if (!deciding) return undefined;
  const bad = until.filter(({ verdict }) => verdict === 'needsWork');
  const seen = group.some((event) => event.kind === 'worked' && event.at <= deciding.at);
  const taken = group.flatMap((event) => (event.kind === 'hint' ? event.hints : []));
  const mistakes = [...new Set(bad.flatMap(({ codes }) => codes))].sort();
  const credited = new Set(bad.flatMap(({ id }) => restored.get(id) ?? []));
  const good = mistakes.filter((code) => credited.has(code));
  return {
    skill: deciding.skill,
    exercise: deciding.exercise,
    step: deciding.step,
    at: deciding.at,
    result: accepted >= 0 ? 'accepted' : bad.length > 0 ? 'needsWork' : 'notReady',
    wrong: bad.length,
    error: deciding.error,
    hints: Math.max(deciding.hints, ...(accepted >= 0 ? [] : taken)),
    worked: seen || until.some(({ worked }) => worked),
    seconds: until.reduce((sum, { seconds }) => sum + seconds, 0),
    mistakes,
    restored: good,
    madeGood: mistakes.length > 0 && good.length === mistakes.length,
    level: deciding.level,
    marks,
  };
}
