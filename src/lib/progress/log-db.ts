import { openDatabase } from './database.ts';
import type { LogBackend } from './log-store.ts';

/** The events in the browser's database: one text each, keyed by the event's id. */
export async function indexedDbLog(): Promise<LogBackend> {
  const db = await openDatabase();
  return {
    all: async () => (await db.getAll('events')) as readonly unknown[],
    get: (ids) => {
      const { store } = db.transaction('events');
      return Promise.all(ids.map((id) => store.get(id) as Promise<unknown>));
    },
    put: async (texts) => {
      const transaction = db.transaction('events', 'readwrite', { durability: 'strict' });
      // What ends the transaction is told once, by the transaction.
      const done = transaction.done.catch((error: unknown) => {
        throw transaction.error ?? error;
      });
      try {
        for (const [id, text] of texts) transaction.store.put(text, id).catch(() => {});
      } catch {
        // Ended meanwhile: what comes next says why.
      }
      await done;
    },
  };
}

/** Whether nothing is kept yet, told without reading it. Where that cannot be told it may be something. Never rejects. */
export async function isLogEmpty(): Promise<boolean> {
  try {
    return (await (await openDatabase()).count('events')) === 0;
  } catch {
    return false;
  }
}
