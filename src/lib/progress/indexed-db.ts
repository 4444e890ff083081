import { openDatabase } from './database.ts';
import type { Backend } from './store.ts';

/** The browser's own database on this device; each put is one transaction, so a killed tab leaves the old or the new text. */
export async function indexedDbBackend(): Promise<Backend> {
  const db = await openDatabase();
  return {
    get: async (key) => {
      const value: unknown = await db.get('progress', key);
      return value === undefined || typeof value === 'string' ? value : JSON.stringify(value);
    },
    put: async (key, text) => {
      const transaction = db.transaction('progress', 'readwrite', { durability: 'strict' });
      try {
        await Promise.all([transaction.store.put(text, key), transaction.done]);
      } catch (error) {
        // What ended the transaction says why; the request in it may only say that it was ended.
        throw transaction.error ?? error;
      }
    },
  };
}
