import { openDB, type IDBPDatabase } from 'idb';

export const DATABASE = 'pin-and-pivot';
/** 1: one text a lesson in `progress`. 2: beside it one text an event in `events`. */
const VERSION = 2;

/** Opening waits for another tab that holds the database in an older version. */
export class BlockedError extends Error {
  override readonly name = 'BlockedError';
}

/**
 * The browser's own database on this device, made or brought up to date: what an older version kept stays as it is. Rejects with
 * the browser's error, or with a BlockedError while another tab holds an older version.
 */
export function openDatabase(): Promise<IDBPDatabase> {
  return new Promise((resolve, reject) => {
    let late = false;
    openDB(DATABASE, VERSION, {
      upgrade(database, from) {
        if (from < 1) database.createObjectStore('progress');
        if (from < 2) database.createObjectStore('events');
      },
      blocked() {
        late = true;
        reject(new BlockedError('another tab holds an older version'));
      },
      // A newer version of the app waits in another tab: it matters more that it can start.
      blocking(_now, _wanted, event) {
        (event.target as IDBDatabase).close();
      },
    }).then((database) => (late ? database.close() : resolve(database)), reject);
  });
}
