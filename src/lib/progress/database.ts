import { openDB, type IDBPDatabase } from 'idb';

export const DATABASE = 'pin-and-pivot';
/** 1: one text a lesson in `progress`. 2: beside it one text an event in `events`. 3: one text a work of the free bench in `works`. */
const VERSION = 3;

/** Opening waits for another tab that holds the database in an older version. */
export class BlockedError extends Error {
  override readonly name = 'BlockedError';
  override readonly message = 'another tab holds an older version';
}

/** One connection for the whole page. */
let shared: Promise<IDBPDatabase> | undefined;
/** A request still waits for the other tab; a second one would wait behind it without being told. */
let waiting = false;

/**
 * The browser's own database on this device, made or brought up to date: what an older version kept stays as it is. Rejects with
 * the browser's error, or with a BlockedError while another tab holds an older version; the next call tries again.
 */
export function openDatabase(): Promise<IDBPDatabase> {
  if (waiting) return Promise.reject(new BlockedError());
  if (shared) return shared;
  const opening = opened();
  shared = opening;
  opening.catch(() => (shared = undefined));
  return opening;
}

function opened(): Promise<IDBPDatabase> {
  return new Promise((resolve, reject) => {
    openDB(DATABASE, VERSION, {
      upgrade(database, from) {
        if (from < 1) database.createObjectStore('progress');
        if (from < 2) database.createObjectStore('events');
        if (from < 3) database.createObjectStore('works');
      },
      blocked() {
        waiting = true;
        reject(new BlockedError());
      },
      // A newer version of the app waits in another tab: it matters more that it can start.
      blocking(_now, _wanted, event) {
        (event.target as IDBDatabase).close();
        shared = undefined;
      },
      terminated() {
        shared = undefined;
      },
    }).then(
      (database) => {
        // Whoever asked was told already that it is blocked.
        if (waiting) database.close();
        waiting = false;
        resolve(database);
      },
      (error: unknown) => {
        waiting = false;
        reject(error as Error);
      },
    );
  });
}
