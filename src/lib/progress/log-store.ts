import { readStored } from './event-schema.ts';
import type { Log } from './events.ts';
import { mergeLogs, orderedText } from './merge.ts';
import { failureOf, type StorageFailure } from './store.ts';

/** Where events are kept: one text for each id. Rejects with the browser's own error when it cannot. */
export interface LogBackend {
  all(): Promise<readonly unknown[]>;
  /** All or none of them. */
  put(texts: ReadonlyMap<string, string>): Promise<void>;
}

export interface KeptLog {
  readonly log: Log;
  /** Entries that cannot be read. They are left where they are: a newer version of the app may know them. */
  readonly unreadable: number;
  /** Why nothing is kept on this device; undefined while all is well. */
  readonly failure: StorageFailure | undefined;
}

export interface LogStore {
  /** All that happened on this device or came from others. Never rejects: without storage it is what this page recorded. */
  load(): Promise<KeptLog>;
  /**
   * Keeps what is new; events that are kept already stay once. `true` when it is on the device. Never rejects: what cannot be
   * kept lasts as long as the page.
   */
  add(events: Log): Promise<boolean>;
}

/** A store of events that keeps working when its backend does not. */
export function logStore(open: () => Promise<LogBackend>): LogStore {
  let memory: Log = [];
  let failure: StorageFailure | undefined;
  let backend: Promise<LogBackend> | undefined;

  async function using<T>(act: (backend: LogBackend) => Promise<T>, writes = false): Promise<T | undefined> {
    try {
      const done = await act(await (backend ??= open()));
      // A full device can still be read.
      if (writes || failure !== 'full') failure = undefined;
      return done;
    } catch (error) {
      // The next call tries again: the tab that was in the way may be closed by then.
      backend = undefined;
      failure = failureOf(error);
      return undefined;
    }
  }
  async function kept(): Promise<Omit<KeptLog, 'failure'>> {
    const entries = (await using((one) => one.all())) ?? [];
    const read = entries.flatMap((entry) => readStored(entry) ?? []);
    return { log: mergeLogs(read), unreadable: entries.length - read.length };
  }
  return {
    async load() {
      const { log, unreadable } = await kept();
      return { log: mergeLogs(log, memory), unreadable, failure };
    },
    async add(events) {
      memory = mergeLogs(memory, events);
      const { log } = await kept();
      const had = new Map(log.map((event) => [event.id, orderedText(event)]));
      // With what could not be kept before, if there was such.
      const all = mergeLogs(log, memory).map((event) => [event.id, orderedText(event)] as const);
      const texts = new Map(all.filter(([id, text]) => had.get(id) !== text));
      if (texts.size === 0) return true;
      return (await using((one) => one.put(texts).then(() => true), true)) ?? false;
    },
  };
}
