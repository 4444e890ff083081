import { indexedDbBackend } from './indexed-db.ts';
import type { Backend } from './store.ts';

export type KeptSteps = Record<string, { step: string; flagged: readonly string[] }>;

/** Where the learner stands in each lesson: read lightly, the lesson page checks it in full. What is not readable is left out. */
export async function stepsIn(backend: Backend, lessons: readonly string[]): Promise<KeptSteps> {
  const kept: KeptSteps = {};
  for (const lesson of lessons) {
    const raw = fromJson((await backend.get(lesson)) ?? 'null');
    if (typeof raw !== 'object' || raw === null || !('step' in raw) || typeof raw.step !== 'string') continue;
    const flagged = 'flagged' in raw && Array.isArray(raw.flagged) ? raw.flagged.map(String) : [];
    kept[lesson] = { step: raw.step, flagged };
  }
  return kept;
}

function fromJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** The same from this device's own storage; nothing where there is none. Never rejects. */
export async function keptSteps(lessons: readonly string[]): Promise<KeptSteps> {
  try {
    return await stepsIn(await indexedDbBackend(), lessons);
  } catch {
    // The lesson page says why.
    return {};
  }
}
