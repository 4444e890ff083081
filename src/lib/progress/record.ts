import * as v from 'valibot';
import { parseAttempt } from '../recipe/parse.ts';
import type { Attempt, Command } from '../recipe/types.ts';

/** What is kept of a lesson between visits. The mark is never kept: it is worked out again from the attempt. */
export interface Progress {
  readonly attempt: Attempt;
  /** Commands taken back that redo would give again, newest last. */
  readonly undone: readonly Command[];
  readonly step: string;
  readonly flagged: readonly string[];
  /** Rungs of the hint ladder that were shown, by step id. */
  readonly hints: Readonly<Record<string, number>>;
  readonly demonstrationSeen: boolean;
}

export interface Problem {
  readonly path: string;
  readonly expected: string;
  readonly found: string;
}

export type ParsedProgress = { readonly ok: Progress } | { readonly problems: readonly Problem[] };

const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(100));
const id = v.pipe(v.string(), v.maxLength(80));

const recordSchema = v.object({
  format: v.literal('pin-and-pivot/progress'),
  version: v.literal(1),
  attempt: v.unknown(),
  undone: v.pipe(v.array(v.unknown()), v.maxLength(5000)),
  step: id,
  flagged: v.pipe(v.array(id), v.maxLength(100)),
  hints: v.record(id, count),
  demonstrationSeen: v.boolean(),
});

/** Text of a progress record, ready to be stored. */
export function progressToText(progress: Progress): string {
  return JSON.stringify({ format: 'pin-and-pivot/progress', version: 1, ...progress });
}

/**
 * Reads a stored record. The attempt and the commands that could be redone go through the same parser as a file
 * from outside; nothing is half-loaded.
 */
export function parseProgress(text: string): ParsedProgress {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    return { problems: [{ path: '', expected: 'JSON', found: String(error).slice(0, 120) }] };
  }
  const result = v.safeParse(recordSchema, raw);
  if (!result.success) {
    return {
      problems: result.issues.map((issue) => ({
        path: v.getDotPath(issue) ?? '',
        expected: issue.expected ?? issue.type,
        found: issue.received,
      })),
    };
  }
  const { attempt, undone, step, flagged, hints, demonstrationSeen } = result.output;
  const parsed = parseAttempt(JSON.stringify(attempt));
  if ('problems' in parsed) return { problems: under('attempt', parsed.problems) };
  const again = parseAttempt(JSON.stringify({ ...parsed.ok, commands: undone }));
  if ('problems' in again) return { problems: under('undone', again.problems) };
  return { ok: { attempt: parsed.ok, undone: again.ok.commands, step, flagged, hints, demonstrationSeen } };
}

function under(path: string, problems: readonly Problem[]): Problem[] {
  return problems.map((problem) => ({ ...problem, path: problem.path ? `${path}.${problem.path}` : path }));
}
