import { answerOf } from './requests.ts';

export const DATABASE = 'pin-and-pivot';
/** 1: one text a lesson in `progress`. 2: beside it one text an event in `events`. 3: one text a work of the free bench in `works`. */
const VERSION = 3;

/** Opening waits for another tab that holds the database in an older version. */
export class BlockedError extends Error {
  override readonly name = 'BlockedError';
  override readonly message = 'another tab holds an older version';
}

/** One connection for the whole page. */
let shared: Promise<IDBDatabase> | undefined;
/** A request still waits for the other tab; a second one would wait behind it without being told. */
let waiting = false;

/**
 * The browser's own database on this device, made or brought up to date: what an older version kept stays as it is. Rejects with
 * the browser's error, or with a BlockedError while another tab holds an older version; the next call tries again.
 */
export function openDatabase(): Promise<IDBDatabase> {
  if (waiting) return Promise.reject(new BlockedError());
  if (shared) return shared;
  const opening = opened();
  shared = opening;
  opening.catch(() => (shared = undefined));
  return opening;
}

function opened(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, VERSION);
    request.addEventListener('upgradeneeded', ({ oldVersion }) => {
      if (oldVersion < 1) request.result.createObjectStore('progress');
      if (oldVersion < 2) request.result.createObjectStore('events');
      if (oldVersion < 3) request.result.createObjectStore('works');
    });
    request.addEventListener('blocked', () => {
      waiting = true;
      reject(new BlockedError());
    });
    answerOf(request).then(
      (database) => {
        // Whoever asked was told already that it is blocked.
        if (waiting) database.close();
        waiting = false;
        // A newer version of the app waits in another tab: it matters more that it can start.
        database.addEventListener('versionchange', () => {
          database.close();
          shared = undefined;
        });
        database.addEventListener('close', () => (shared = undefined));
        resolve(database);
      },
      (error: unknown) => {
        waiting = false;
        reject(error as Error);
      },
    );
  });
}
