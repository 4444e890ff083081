import { openDatabase } from './database.ts';
import type { LogBackend } from './log-store.ts';

/** The events in the browser's database: one text each, keyed by the event's id. */
export async function indexedDbLog(): Promise<LogBackend> {
  const db = await openDatabase();
  return {
    all: async () => (await db.getAll('events')) as readonly unknown[],
    put: async (texts) => {
      const transaction = db.transaction('events', 'readwrite', { durability: 'strict' });
      try {
        const puts = [...texts].map(([id, text]) => transaction.store.put(text, id));
        await Promise.all([...puts, transaction.done]);
      } catch (error) {
        throw transaction.error ?? error;
      }
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
