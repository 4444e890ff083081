import { wasShown } from '../practice/second-chance.ts';
import type { Log } from '../progress/events.ts';
import { ownLog } from '../progress/own-log.ts';
import { recordCredit } from './recorder.ts';
import type { Remembered } from './remembered-chance.ts';

/** What came of a second chance. */
export type Settled = 'restored' | 'shown' | 'unfinished';

const isCredited = (log: Log, { of, code }: Remembered[number]): boolean =>
  log.some((event) => event.kind === 'credit' && event.of === of && event.code === code);

let before: Promise<unknown> = Promise.resolve();

/**
 * What a drill is worth as a second chance. `accepted`: all of its steps are. Done right and by the learner's own hand, the credit
 * for each of its mistakes is recorded, once. A hint is told beside the mark and does not stand in the way; the solution does. Never rejects.
 */
export function settleChance(drill: string, mistakes: Remembered, accepted: boolean): Promise<Settled> {
  // One after the other: asked for twice at a time, the second finds what the first has recorded.
  const settled = before.then(() => settle(drill, mistakes, accepted));
  before = settled;
  return settled;
}

async function settle(drill: string, mistakes: Remembered, accepted: boolean): Promise<Settled> {
  const { log } = await ownLog().load();
  const open = mistakes.filter((one) => !isCredited(log, one));
  if (open.length === 0) return 'restored';
  if (wasShown(log, drill)) return 'shown';
  if (!accepted) return 'unfinished';
  for (const { of, code } of open) {
    const mark = log.find(({ id }) => id === of);
    if (mark) await recordCredit(mark, code);
  }
  return 'restored';
}
