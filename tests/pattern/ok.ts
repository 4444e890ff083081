import type { Outcome, RefusedBecause } from '../../src/lib/pattern/outcome.ts';

/** The result of an operation that must have been done. */
export function ok<T>(outcome: Outcome<T>): T {
  if ('refused' in outcome) throw new Error(`refused: ${JSON.stringify(outcome.refused)}`);
  return outcome.ok;
}

/** The code of an operation that must have been refused. */
export function refusal<T>(outcome: Outcome<T>): string {
  return ('refused' in outcome ? outcome.refused : ({ code: 'done' } satisfies RefusedBecause)).code;
}
