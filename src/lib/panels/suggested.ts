import { dueOn } from '../practice/due.ts';
import { skillStates } from '../practice/schedule.ts';
import { suggest, type Suggestion } from '../practice/suggest.ts';
import { ownLog } from '../progress/own-log.ts';
import { localDay } from './today.ts';

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
