import type { Backend } from './store.ts';

/** Where a lesson was done with, by the day (`2026-05-31`, as the device counts days). */
export interface Done {
  readonly on: string;
  /** Content version of the lesson at that time. */
  readonly content: number;
}
export interface TestedOut {
  readonly on: string;
  /** The lesson whose test was passed: this one, or one that builds on it. */
  readonly by: string;
}

/** What was achieved in the course, by lesson id. A fact of the past, unlike a mark: it stays true when the work is changed. */
export interface CourseRecord {
  readonly done: Readonly<Record<string, Done>>;
  readonly testedOut: Readonly<Record<string, TestedOut>>;
}

export const NOTHING_DONE: CourseRecord = { done: {}, testedOut: {} };

/** No lesson can have this id. */
export const COURSE_KEY = ':course';
const FORMAT = 'pin-and-pivot/course';

const MOST = 500;
const DAY = /^\d{4}-\d\d-\d\d$/;
const ID = /^(?!constructor$)[a-z0-9][a-z0-9-]{0,60}$/;
const isRecord = (data: unknown): data is Record<string, unknown> =>
  typeof data === 'object' && data !== null && !Array.isArray(data);

function entries<T>(data: unknown, fits: (entry: Record<string, unknown>) => T | undefined) {
  if (!isRecord(data) || Object.keys(data).length > MOST) return undefined;
  const read: Record<string, T> = {};
  for (const [id, entry] of Object.entries(data)) {
    const fit = ID.test(id) && isRecord(entry) && DAY.test(String(entry['on'])) ? fits(entry) : undefined;
    if (fit === undefined) return undefined;
    read[id] = fit;
  }
  return read;
}

/** Reads a stored record; undefined when it is none, all or nothing. Written by hand: the home page reads it and has no room for a schema. */
export function parseCourse(text: string): CourseRecord | undefined {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!isRecord(raw) || raw['format'] !== FORMAT || raw['version'] !== 1) return undefined;
  const done = entries(raw['done'], ({ on, content }) =>
    Number.isInteger(content) ? { on: String(on), content: Number(content) } : undefined,
  );
  const testedOut = entries(raw['testedOut'], ({ on, by }) =>
    typeof by === 'string' && ID.test(by) ? { on: String(on), by } : undefined,
  );
  return done && testedOut ? { done, testedOut } : undefined;
}

export const courseToText = (record: CourseRecord): string =>
  JSON.stringify({ format: FORMAT, version: 1, ...record });

type Dated = { readonly on: string };

/** What either has. Of two entries for one lesson the earlier counts, of two of one day the one that comes first as text. */
function united<T extends Dated>(
  a: Readonly<Record<string, T>>,
  b: Readonly<Record<string, T>>,
): Readonly<Record<string, T>> {
  const both: Record<string, T> = {};
  for (const [id, entry] of [...Object.entries(a), ...Object.entries(b)]) {
    const other = both[id];
    const rank = (one: T): string => one.on + JSON.stringify(Object.entries(one).sort());
    if (!other || rank(entry) < rank(other)) both[id] = entry;
  }
  return both;
}

/** Puts the records of two devices together: nothing is lost, nothing doubled, in whatever order and however often. */
export const mergeCourses = (a: CourseRecord, b: CourseRecord): CourseRecord => ({
  done: united(a.done, b.done),
  testedOut: united(a.testedOut, b.testedOut),
});

/** The kept record; an empty one when there is none or it cannot be read. Rejects when the backend does. */
export async function readCourse(backend: Backend): Promise<CourseRecord> {
  const text = await backend.get(COURSE_KEY);
  return (text !== undefined && parseCourse(text)) || NOTHING_DONE;
}

/** Adds to the kept record; one that cannot be read is moved aside first. Rejects when the backend does. */
export async function addToCourse(backend: Backend, more: Partial<CourseRecord>): Promise<void> {
  const text = await backend.get(COURSE_KEY);
  const kept = text === undefined ? NOTHING_DONE : parseCourse(text);
  if (!kept) await backend.put(`${COURSE_KEY}:unreadable`, text ?? '');
  const next = mergeCourses(kept ?? NOTHING_DONE, { ...NOTHING_DONE, ...more });
  await backend.put(COURSE_KEY, courseToText(next));
}
