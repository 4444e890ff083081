import { indexedDbLog } from './log-db.ts';
import { logStore, type LogStore } from './log-store.ts';

let store: LogStore | undefined;

/** What happened, as this device keeps it: one store for the whole page, so that what could not be kept goes along from part to part. */
export const ownLog = (): LogStore => (store ??= logStore(indexedDbLog));
