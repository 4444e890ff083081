import * as v from 'valibot';
import { problemOf, type Problem } from '../recipe/problem.ts';
import type { Backend } from './store.ts';

/** What was measured on paper in a lesson: by step, then by item; mm on the half-scale paper, or radians. */
export type PaperRecord = Readonly<Record<string, Readonly<Record<string, number>>>>;

const name = v.pipe(v.string(), v.maxLength(160));
const schema = v.object({
  format: v.literal('pin-and-pivot/paper'),
  version: v.literal(1),
  steps: v.record(name, v.record(name, v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(5000)))),
});

/** Kept beside the lesson's own record and never in it, so that it comes into no attempt file. */
const keyOf = (lesson: string): string => `${lesson}:paper`;

export const paperToText = (steps: PaperRecord): string =>
  JSON.stringify({ format: 'pin-and-pivot/paper', version: 1, steps });

/** Reads a kept record: all of it or nothing. */
export function parsePaper(
  text: string,
): { readonly ok: PaperRecord } | { readonly problems: readonly Problem[] } {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    return { problems: [{ path: '', expected: 'JSON', found: String(error).slice(0, 120) }] };
  }
  const result = v.safeParse(schema, raw);
  return result.success ? { ok: result.output.steps } : { problems: result.issues.map(problemOf) };
}

/** What was measured in a lesson; empty when there is nothing, or nothing that can be read. Rejects when the browser keeps nothing. */
export async function loadPaper(backend: Backend, lesson: string): Promise<PaperRecord> {
  const text = await backend.get(keyOf(lesson));
  const parsed = text === undefined ? { ok: {} } : parsePaper(text);
  return 'ok' in parsed ? parsed.ok : {};
}

/** Keeps it on this device. Rejects when the browser keeps nothing. */
export const savePaper = (backend: Backend, lesson: string, steps: PaperRecord): Promise<void> =>
  backend.put(keyOf(lesson), paperToText(steps));
