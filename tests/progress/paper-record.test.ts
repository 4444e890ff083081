import { describe, expect, it } from 'vitest';
import { loadPaper, paperToText, parsePaper, savePaper } from '../../src/lib/progress/paper-record.ts';
import type { Backend } from '../../src/lib/progress/store.ts';

function memory(): { backend: Backend; kept: Map<string, string> } {
  const kept = new Map<string, string>();
  const backend: Backend = {
    get: (key) => Promise.resolve(kept.get(key)),
    put: (key, text) => Promise.resolve(void kept.set(key, text)),
  };
  return { backend, kept };
}
const steps = { move: { 'front intake slash': 32.5 } };

describe('what was measured on paper', () => {
  it('comes back as it was kept, beside the lesson’s own record and never over it', async () => {
    const { backend, kept } = memory();
    kept.set('waist-to-side', 'the attempt');
    expect(await loadPaper(backend, 'waist-to-side')).toEqual({});
    await savePaper(backend, 'waist-to-side', steps);
    expect(await loadPaper(backend, 'waist-to-side')).toEqual(steps);
    expect(await loadPaper(backend, 'french-dart')).toEqual({});
    expect(kept.get('waist-to-side')).toBe('the attempt');
  });
  it.each([
    ['no JSON', '{'],
    ['another format', JSON.stringify({ format: 'x', version: 1, steps })],
    ['a newer version', JSON.stringify({ format: 'pin-and-pivot/paper', version: 2, steps })],
    ['a text for a number', paperToText({ move: { a: '1' as unknown as number } })],
    ['a length below nothing', paperToText({ move: { a: -1 } })],
  ])('is read whole or not at all: %s', async (_, text) => {
    expect(parsePaper(text)).toHaveProperty('problems');
    const { backend, kept } = memory();
    kept.set('waist-to-side:paper', text);
    expect(await loadPaper(backend, 'waist-to-side')).toEqual({});
  });
  it('says where, what was expected and found', () => {
    const parsed = parsePaper(paperToText({ move: { a: -1 } }));
    expect('problems' in parsed && parsed.problems[0]).toMatchObject({ path: 'steps.move.a' });
  });
});
