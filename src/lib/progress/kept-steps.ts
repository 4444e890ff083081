import { indexedDbBackend } from './indexed-db.ts';

/** Where the learner stands in each lesson, for the course map only: read lightly, the lesson page checks it in full. */
export async function keptSteps(
  lessons: readonly string[],
): Promise<Record<string, { step: string; flagged: readonly string[] }>> {
  const kept: Record<string, { step: string; flagged: readonly string[] }> = {};
  try {
    const backend = await indexedDbBackend();
    for (const lesson of lessons) {
      const raw: unknown = JSON.parse((await backend.get(lesson)) ?? 'null');
      if (typeof raw !== 'object' || raw === null || !('step' in raw) || typeof raw.step !== 'string')
        continue;
      const flagged = 'flagged' in raw && Array.isArray(raw.flagged) ? raw.flagged.map(String) : [];
      kept[lesson] = { step: raw.step, flagged };
    }
  } catch {
    // No storage, or nothing readable in it: the map shows a fresh start, the lesson page says why.
  }
  return kept;
}
