import { openDatabase } from './database.ts';
import { answerOf, endOf } from './requests.ts';
import type { WorksBackend } from './works-store.ts';

/** The works in the browser's own database: one text each, keyed by its id; each change is one transaction. */
export async function indexedDbWorks(): Promise<WorksBackend> {
  const db = await openDatabase();
  /** What ends the transaction says why; the request in it may only say that it was ended. */
  const change = async (act: (store: IDBObjectStore) => Promise<unknown>): Promise<void> => {
    const transaction = db.transaction('works', 'readwrite', { durability: 'strict' });
    try {
      await Promise.all([act(transaction.objectStore('works')), endOf(transaction)]);
    } catch (error) {
      throw transaction.error ?? error;
    }
  };
  return {
    all: async () => {
      const store = db.transaction('works').objectStore('works');
      const [ids, texts] = await Promise.all([
        answerOf(store.getAllKeys()),
        answerOf<unknown[]>(store.getAll()),
      ]);
      return ids.map((id, i) => {
        const text = texts[i];
        return [String(id), typeof text === 'string' ? text : JSON.stringify(text)] as const;
      });
    },
    put: (id, text) => change((store) => answerOf(store.put(text, id))),
    remove: (id) => change((store) => answerOf(store.delete(id))),
  };
}
