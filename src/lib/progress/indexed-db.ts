import { openDatabase } from './database.ts';
import { answerOf, endOf } from './requests.ts';
import type { Backend } from './store.ts';

/** The browser's own database on this device; each put is one transaction, so a killed tab leaves the old or the new text. */
export async function indexedDbBackend(): Promise<Backend> {
  const db = await openDatabase();
  return {
    get: async (key) => {
      const value: unknown = await answerOf(db.transaction('progress').objectStore('progress').get(key));
      return value === undefined || typeof value === 'string' ? value : JSON.stringify(value);
    },
    put: async (key, text) => {
      const transaction = db.transaction('progress', 'readwrite', { durability: 'strict' });
      try {
        const store = transaction.objectStore('progress');
        await Promise.all([answerOf(store.put(text, key)), endOf(transaction)]);
      } catch (error) {
        // What ended the transaction says why; the request in it may only say that it was ended.
        throw transaction.error ?? error;
      }
    },
  };
}
