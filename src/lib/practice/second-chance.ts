import type { Log, MarkEvent } from '../progress/events.ts';
import { isolating, type Isolating } from './isolate.ts';
import { occasionsOf, type Occasion } from './occasions.ts';

/*
 * After a mistake, the smallest drill that isolates it; done right, it restores the credit. A mistake is what a mark found wrong: a mark in which
 * something is missing is `notReady`, and so every code of a mark that needs work is of something wrong (`verdictOf`).
 */

/** One mistake, and the newest mark of its occasion in which it was found. */
export interface Mistake {
  readonly of: MarkEvent;
  readonly code: string;
}

/** What can be made good at once: the mistakes of one occasion that one drill isolates, or for which there is none. */
export interface Chance {
  readonly occasion: Occasion;
  /** By code, in order of the alphabet; at least one. */
  readonly mistakes: readonly Mistake[];
  /** undefined for a code that came from another version. */
  readonly by: Isolating | undefined;
}

/** Whether there is a drill for it. */
export const isDrilled = (chance: Chance): chance is Chance & { readonly by: Isolating } =>
  chance.by !== undefined;

/** What of an occasion is still to be made good, in order of codes. */
function chancesOf(occasion: Occasion): readonly Chance[] {
  const groups = new Map<string, Chance>();
  const { marks } = occasion;
  // What was checked once more after it was right belongs to no mistake of this occasion.
  const right = marks.findIndex(({ verdict }) => verdict === 'accepted');
  const bad = marks.slice(0, right < 0 ? undefined : right).filter(({ verdict }) => verdict === 'needsWork');
  for (const code of occasion.mistakes) {
    if (occasion.restored.includes(code)) continue;
    const of = bad.findLast(({ codes }) => codes.includes(code))!;
    const by = isolating(code, of.skill);
    const key = JSON.stringify(by ?? null);
    const mistakes = [...(groups.get(key)?.mistakes ?? []), { of, code }];
    groups.set(key, { occasion, mistakes, by });
  }
  return [...groups.values()];
}

/** Right at once and without help: it shows that the hand knows it. */
const isClean = ({ result, wrong, hints, worked }: Occasion): boolean =>
  result === 'accepted' && wrong === 0 && hints === 0 && !worked;

/**
 * What can be made good, the newest first. A chance goes when its mistakes are credited, and when its skill was later got right at once and
 * without help. Pure: the same history gives the same, whichever devices it came from.
 */
export function openChances(log: Log): readonly Chance[] {
  const clean = new Set<string>();
  const open: Chance[] = [];
  for (const occasion of [...occasionsOf(log)].reverse()) {
    if (!clean.has(occasion.skill)) open.push(...chancesOf(occasion));
    if (isClean(occasion)) clean.add(occasion.skill);
  }
  return open;
}

/** What can be made good of the occasion that a mark belongs to, also when its skill was got right since. */
export const chancesAt = (log: Log, mark: string): readonly Chance[] =>
  occasionsOf(log)
    .filter(({ marks }) => marks.some(({ id }) => id === mark))
    .flatMap(chancesOf);

/** Codes of what was made good of the occasion that a mark belongs to, in order of the alphabet. */
export const restoredAt = (log: Log, mark: string): readonly string[] =>
  occasionsOf(log).find(({ marks }) => marks.some(({ id }) => id === mark))?.restored ?? [];

/** What a mark's mistake can be made good by, undefined when it is made good, or not in the log. */
export const chanceOf = (log: Log, mark: string, code: string): Chance | undefined =>
  chancesAt(log, mark).find(({ mistakes }) => mistakes.some((one) => one.code === code));

/** Whether help was taken in an exercise that outweighs doing it: the worked solution of a step was seen. */
export const wasShown = (log: Log, exercise: string): boolean =>
  log.some(
    (event) =>
      event.exercise.id === exercise && (event.kind === 'worked' || (event.kind === 'mark' && event.worked)),
  );
