import * as v from 'valibot';
import { jsonFault } from '../recipe/json-fault.ts';
import { problemOf, shortly, type Problem } from '../recipe/problem.ts';
import { parseCourse, type CourseRecord } from './course.ts';
import { eventSchema } from './event-schema.ts';
import type { Log } from './events.ts';
import { mergeLogs, orderedText } from './merge.ts';

/** All of a learner's progress that can go to another device: what happened, and what was achieved in the course. */
export interface WholeProgress {
  readonly log: Log;
  readonly course: CourseRecord;
}

export type ParsedLog = { readonly ok: WholeProgress } | { readonly problems: readonly Problem[] };

const FORMAT = 'pin-and-pivot/progress-log';
const VERSION = 1;
/** No more problems than a person will read. */
const MOST = 20;

/** The largest progress file that is read, bytes: some 100,000 marks. */
export const LARGEST_LOG = 40_000_000;

const fileSchema = v.strictObject({
  format: v.literal(FORMAT),
  version: v.literal(VERSION),
  course: v.unknown(),
  events: v.array(eventSchema),
});

/** The text of a progress file (`*.progress.json`); the same progress gives the same text. */
export function logToText({ log, course }: WholeProgress): string {
  // One event a line, so that a person can look into the file.
  const events = mergeLogs(log).map((event) => `\n${orderedText(event)}`);
  const record = orderedText({ ...course, format: 'pin-and-pivot/course', version: 1 });
  return `{"format":"${FORMAT}","version":${VERSION},"course":${record},"events":[${events.join(',')}]}\n`;
}

const one = (path: string, expected: string, found: string): ParsedLog => ({
  problems: [{ path, expected, found }],
});

/**
 * Reads a progress file. All or nothing: what is wrong is told with path, expected and found, and nothing is taken from a file
 * with a fault. Lessons, steps and skills need not be known: content changes, and what was done stays done. Never throws.
 */
export function parseLog(text: string): ParsedLog {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    const fault = jsonFault(text);
    if (!fault) return one('', 'JSON', 'a text that is none');
    return one('', fault.expected, `${fault.found} at line ${fault.line}, column ${fault.column}`);
  }
  if (typeof data !== 'object' || data === null || Array.isArray(data))
    return one('', 'an object', shortly(data));
  const { format, version } = data as Record<string, unknown>;
  if (format !== FORMAT) return one('format', JSON.stringify(FORMAT), shortly(format));
  if (typeof version === 'number' && version > VERSION)
    return one('version', `${VERSION}`, `${shortly(version)}, from a newer version of Pin & Pivot`);
  const read = v.safeParse(fileSchema, data);
  if (!read.success) return { problems: read.issues.slice(0, MOST).map(problemOf) };
  const course = parseCourse(JSON.stringify(read.output.course) ?? '');
  if (!course) return one('course', 'a course record', shortly(read.output.course));
  return { ok: { log: mergeLogs(read.output.events), course } };
}
