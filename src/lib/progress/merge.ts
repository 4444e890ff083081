import type { Log, ProgressEvent } from './events.ts';

/** Data with all keys in order of the alphabet. */
const ordered = (value: unknown): unknown =>
  typeof value !== 'object' || value === null || Array.isArray(value)
    ? value
    : Object.fromEntries(
        Object.entries(value)
          .sort(([a], [b]) => (a < b ? -1 : 1))
          .map(([key, inner]) => [key, ordered(inner)]),
      );

/** The one text of data, whatever order its keys are in. */
export const orderedText = (data: unknown): string => JSON.stringify(ordered(data));

const inTime = (a: ProgressEvent, b: ProgressEvent): number =>
  a.at - b.at || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/**
 * Puts what happened on several devices together: every event once, in order of time, ids where two are of one moment. In
 * whatever order and however often logs are merged, the result is the same. Of two events with one id and different contents
 * (a file was edited by hand) the one whose text comes first is taken everywhere.
 */
export function mergeLogs(...logs: readonly Log[]): Log {
  const byId = new Map<string, ProgressEvent>();
  for (const log of logs)
    for (const event of log) {
      const other = byId.get(event.id);
      if (!other || (other !== event && orderedText(event) < orderedText(other))) byId.set(event.id, event);
    }
  return [...byId.values()].sort(inTime);
}
