import * as v from 'valibot';
import { checkAttempt } from '../recipe/parse.ts';
import { problemOf, type Problem } from '../recipe/problem.ts';
import type { Progress } from './progress.ts';

export type ParsedProgress = { readonly ok: Progress } | { readonly problems: readonly Problem[] };

const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(100));
const id = v.pipe(v.string(), v.maxLength(80));

const recordSchema = v.object({
  format: v.literal('pin-and-pivot/progress'),
  version: v.literal(1),
  attempt: v.unknown(),
  step: id,
  flagged: v.pipe(v.array(id), v.maxLength(100)),
  hints: v.record(id, count),
  demonstrationSeen: v.boolean(),
  checked: v.optional(v.pipe(v.array(id), v.maxLength(100))),
});

/**
 * Reads a stored record. The attempt goes through the same parser as a file from outside; nothing is half-loaded.
 */
export function parseProgress(text: string): ParsedProgress {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    return { problems: [{ path: '', expected: 'JSON', found: String(error).slice(0, 120) }] };
  }
  const result = v.safeParse(recordSchema, raw);
  if (!result.success) return { problems: result.issues.map(problemOf) };
  const { attempt, step, flagged, hints, demonstrationSeen, checked } = result.output;
  const parsed = checkAttempt(attempt);
  if ('problems' in parsed) return { problems: under('attempt', parsed.problems) };
  const kept = { attempt: parsed.ok, step, flagged, hints, demonstrationSeen };
  return { ok: checked ? { ...kept, checked } : kept };
}

function under(path: string, problems: readonly Problem[]): Problem[] {
  return problems.map((problem) => ({ ...problem, path: problem.path ? `${path}.${problem.path}` : path }));
}
