import { failureOf, type Notice } from './store.ts';
import { parseWork, workToText, type KeptWork } from './works.ts';

/** Where works are kept: one text for each id. Rejects with the browser's own error when it cannot. */
export interface WorksBackend {
  all(): Promise<readonly (readonly [id: string, text: string])[]>;
  put(id: string, text: string): Promise<void>;
  remove(id: string): Promise<void>;
}

export interface WorksStore {
  /** All works that can be read, the last one worked on first. Those that cannot stay where they are. Never rejects. */
  all(): Promise<readonly KeptWork[]>;
  /** Keeps a work in the place of the one of its id; the newest call wins. Never rejects: what cannot be kept lasts as long as the page. */
  keep(work: KeptWork): Promise<void>;
  /** Takes a work away for good. Never rejects. */
  remove(id: string): Promise<void>;
}

/** A store of works that keeps working when its backend does not: what is wrong is told once through `onNotice`. */
export function worksStore(
  open: () => Promise<WorksBackend>,
  onNotice: (notice: Notice) => void,
): WorksStore {
  /** What this page has kept, by id; undefined for what it took away. */
  const memory = new Map<string, string | undefined>();
  const said = new Set<Notice['kind']>();
  let backend: Promise<WorksBackend> | undefined;
  let queue: Promise<unknown> = Promise.resolve();

  function say(notice: Notice): void {
    if (said.has(notice.kind)) return;
    said.add(notice.kind);
    onNotice(notice);
  }
  async function using<T>(act: (backend: WorksBackend) => Promise<T>): Promise<T | undefined> {
    try {
      return await act(await (backend ??= open()));
    } catch (error) {
      // The next call tries again: the tab that was in the way may be closed by then.
      backend = undefined;
      say({ kind: failureOf(error) });
      return undefined;
    }
  }
  /** One after the other, so that an older text can never land on a newer one. */
  function write(id: string, text: string | undefined): Promise<void> {
    memory.set(id, text);
    const next = queue.then(async () => {
      if (memory.get(id) !== text) return;
      await using((one) => (text === undefined ? one.remove(id) : one.put(id, text)));
    });
    queue = next;
    return next;
  }
  return {
    async all() {
      await queue;
      const texts = new Map<string, string | undefined>(await using((one) => one.all()));
      for (const [id, text] of memory) texts.set(id, text);
      const works: KeptWork[] = [];
      for (const text of texts.values()) {
        if (text === undefined) continue;
        const parsed = parseWork(text);
        if ('ok' in parsed) works.push(parsed.ok);
        else say({ kind: 'corrupted', text, problems: parsed.problems });
      }
      return works.sort((a, b) => b.at - a.at || (a.id < b.id ? -1 : 1));
    },
    keep: (work) => write(work.id, workToText(work)),
    remove: (id) => write(id, undefined),
  };
}
