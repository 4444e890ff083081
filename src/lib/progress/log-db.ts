import { openDatabase } from './database.ts';
import type { LogBackend } from './log-store.ts';
import { answerOf, endOf } from './requests.ts';

/** The events in the browser's database: one text each, keyed by the event's id. */
export async function indexedDbLog(): Promise<LogBackend> {
  const db = await openDatabase();
  const events = () => db.transaction('events').objectStore('events');
  return {
    all: () => answerOf<unknown[]>(events().getAll()),
    get: (ids) => {
      const store = events();
      return Promise.all(ids.map((id) => answerOf<unknown>(store.get(id))));
    },
    put: async (texts) => {
      const transaction = db.transaction('events', 'readwrite', { durability: 'strict' });
      // What ends the transaction is told once, by the transaction.
      const done = endOf(transaction).catch((error: unknown) => {
        throw transaction.error ?? error;
      });
      const store = transaction.objectStore('events');
      try {
        for (const [id, text] of texts) store.put(text, id);
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
    const db = await openDatabase();
    return (await answerOf(db.transaction('events').objectStore('events').count())) === 0;
  } catch {
    return false;
  }
}
