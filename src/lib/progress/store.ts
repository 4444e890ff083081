import type { Problem } from '../recipe/problem.ts';
import { progressToText, type Progress } from './progress.ts';

/** Where records are kept: one text for each key. Rejects with the browser's own error when it cannot. */
export interface Backend {
  get(key: string): Promise<string | undefined>;
  put(key: string, text: string): Promise<void>;
}

/** Why nothing more is being kept: the browser forbids it, there is no room, or a tab with another version of the app is in the way. */
export type StorageFailure = 'forbidden' | 'full' | 'otherVersion';

/** Said once each, plainly: why nothing more is being kept, or that something kept could not be read. */
export type Notice =
  | { readonly kind: StorageFailure }
  | { readonly kind: 'corrupted'; readonly text: string; readonly problems: readonly Problem[] };

export interface ProgressStore {
  /** The kept progress of a lesson, or undefined when there is none or it could not be read. Rejects only when
   *  the page cannot fetch what checks records: going on fresh would overwrite one that may be sound. */
  load(lesson: string): Promise<Progress | undefined>;
  /** Keeps the progress; the newest call wins. Never rejects: work goes on in memory. */
  save(lesson: string, progress: Progress): Promise<void>;
}

/**
 * A store that keeps working when its backend does not: the first failure is reported through `onNotice`, records stay
 * in memory. A record that cannot be read is moved aside (key `<lesson>:unreadable`) before anything overwrites it.
 */
export function progressStore(
  open: () => Promise<Backend>,
  onNotice: (notice: Notice) => void,
): ProgressStore {
  const memory = new Map<string, string>();
  const said = new Set<Notice['kind']>();
  let backend: Promise<Backend | undefined> | undefined;
  let queue: Promise<void> = Promise.resolve();

  function say(notice: Notice): void {
    if (said.has(notice.kind)) return;
    said.add(notice.kind);
    onNotice(notice);
  }
  function failed(error: unknown): void {
    say({ kind: failureOf(error) });
  }
  function opened(): Promise<Backend | undefined> {
    backend ??= open().catch((error: unknown) => {
      failed(error);
      return undefined;
    });
    return backend;
  }
  async function read(key: string): Promise<string | undefined> {
    const kept = memory.get(key);
    if (kept !== undefined) return kept;
    try {
      return await (await opened())?.get(key);
    } catch (error) {
      failed(error);
      return undefined;
    }
  }
  async function write(key: string, text: string): Promise<void> {
    memory.set(key, text);
    try {
      await (await opened())?.put(key, text);
    } catch (error) {
      failed(error);
    }
  }

  return {
    async load(lesson) {
      const text = await read(lesson);
      if (text === undefined) return undefined;
      // A first visit has nothing to be checked, and does not wait for what checks it.
      const { parseProgress } = await import('./record.ts');
      const parsed = parseProgress(text);
      if ('ok' in parsed) return parsed.ok;
      await write(`${lesson}:unreadable`, text);
      say({ kind: 'corrupted', text, problems: parsed.problems });
      return undefined;
    },
    save(lesson, progress) {
      const text = progressToText(progress);
      memory.set(lesson, text);
      // One after the other, so that an older record can never land on a newer one.
      queue = queue.then(() => (memory.get(lesson) === text ? write(lesson, text) : undefined));
      return queue;
    },
  };
}

/** What a browser's error about storage means for the learner. */
export function failureOf(error: unknown): StorageFailure {
  const name = typeof error === 'object' && error !== null && 'name' in error ? String(error.name) : '';
  if (name === 'QuotaExceededError') return 'full';
  return name === 'VersionError' || name === 'BlockedError' ? 'otherVersion' : 'forbidden';
}
