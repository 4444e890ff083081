import { readStored } from './event-schema.ts';
import type { Log } from './events.ts';
import { mergeLogs, orderedText } from './merge.ts';
import { failureOf, type StorageFailure } from './store.ts';

/** Where events are kept: one text for each id. Rejects with the browser's own error when it cannot. */
export interface LogBackend {
  all(): Promise<readonly unknown[]>;
  /** What is kept under these ids, in their order; undefined where there is nothing. */
  get(ids: readonly string[]): Promise<readonly unknown[]>;
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
  /** What could not be kept so far. */
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
  /** Puts what differs from what is there. */
  async function write(one: LogBackend, log: Log): Promise<true> {
    const kept = await one.get(log.map(({ id }) => id));
    const texts = new Map<string, string>();
    for (const [i, event] of log.entries()) {
      const there = readStored(kept[i]);
      const text = orderedText(there ? mergeLogs([there], [event])[0] : event);
      if (text !== kept[i]) texts.set(event.id, text);
    }
    if (texts.size > 0) await one.put(texts);
    return true;
  }
  return {
    async load() {
      const entries = (await using((one) => one.all())) ?? [];
      const read = entries.flatMap((entry) => readStored(entry) ?? []);
      return { log: mergeLogs(read, memory), unreadable: entries.length - read.length, failure };
    },
    async add(events) {
      memory = mergeLogs(memory, events);
      const log = memory;
      const done = (await using((one) => write(one, log), true)) ?? false;
      // What came meanwhile still waits for its own turn.
      const written = new Set(log);
      if (done) memory = memory.filter((event) => !written.has(event));
      return done;
    },
  };
}
