import { describe, expect, it } from 'vitest';
import { progressStore, type Backend, type Notice } from '../../src/lib/progress/store.ts';
import type { Progress } from '../../src/lib/progress/progress.ts';

const progress = (step: string): Progress => ({
  attempt: {
    format: 'pin-and-pivot/recipe',
    version: 1,
    block: { figure: 'F2' },
    fabric: 'knit',
    seed: 0,
    lesson: { id: 'slanted-seam', content: 1 },
    commands: [{ do: 'open-out', about: 'centre-front', step: 'open-out' }],
  },
  step,
  flagged: ['read-the-block'],
  hints: { 'open-out': 2 },
  demonstrationSeen: true,
});

function mapBackend(texts = new Map<string, string>()): Backend & { texts: Map<string, string> } {
  return {
    texts,
    get: async (key) => texts.get(key),
    put: async (key, text) => void texts.set(key, text),
  };
}

describe('progress store', () => {
  it('gives back what was kept', async () => {
    const backend = mapBackend();
    await progressStore(async () => backend, fail).save('slanted-seam', progress('open-out'));
    const again = await progressStore(async () => backend, fail).load('slanted-seam');
    expect(again).toEqual(progress('open-out'));
  });

  it('has nothing for a lesson never opened', async () => {
    expect(await progressStore(async () => mapBackend(), fail).load('x')).toBeUndefined();
  });

  it('keeps the newest of several saves that overlap', async () => {
    const backend = mapBackend();
    const slow: Backend = {
      ...backend,
      put: (key, text) => new Promise((done) => setTimeout(() => done(backend.put(key, text)), 2)),
    };
    const store = progressStore(async () => slow, fail);
    await Promise.all(['a', 'b', 'c'].map((step) => store.save('slanted-seam', progress(step))));
    const kept = await progressStore(async () => backend, fail).load('slanted-seam');
    expect(kept?.step).toBe('c');
  });

  it('says once that storage is forbidden and works on in memory', async () => {
    const notices: Notice[] = [];
    const store = progressStore(
      () => Promise.reject(new DOMException('no', 'SecurityError')),
      (n) => notices.push(n),
    );
    await store.save('slanted-seam', progress('a'));
    await store.save('slanted-seam', progress('b'));
    expect((await store.load('slanted-seam'))?.step).toBe('b');
    expect(notices).toEqual([{ kind: 'forbidden' }]);
  });

  it('says once that storage is full and works on in memory', async () => {
    const notices: Notice[] = [];
    const full: Backend = {
      get: async () => undefined,
      put: () => Promise.reject(new DOMException('full', 'QuotaExceededError')),
    };
    const store = progressStore(
      async () => full,
      (n) => notices.push(n),
    );
    await store.save('slanted-seam', progress('a'));
    await store.save('slanted-seam', progress('b'));
    expect((await store.load('slanted-seam'))?.step).toBe('b');
    expect(notices).toEqual([{ kind: 'full' }]);
  });

  it.each([
    ['no JSON', '{"format":"pin-and-pivot/progr'],
    ['another format', '{"format":"other"}'],
    ['a newer version', JSON.stringify({ format: 'pin-and-pivot/progress', version: 2, ...progress('a') })],
    [
      'an unknown command',
      JSON.stringify({
        format: 'pin-and-pivot/progress',
        version: 1,
        ...progress('a'),
        attempt: { ...progress('a').attempt, commands: [{ do: 'fly' }] },
      }),
    ],
  ])('moves aside a record with %s and says where it breaks', async (_name, text) => {
    const backend = mapBackend(new Map([['slanted-seam', text]]));
    const notices: Notice[] = [];
    const store = progressStore(
      async () => backend,
      (n) => notices.push(n),
    );
    expect(await store.load('slanted-seam')).toBeUndefined();
    expect(notices).toHaveLength(1);
    const [notice] = notices;
    if (notice?.kind !== 'corrupted') throw new Error('expected a notice of kind corrupted');
    expect(notice.text).toBe(text);
    expect(notice.problems.length).toBeGreaterThan(0);
    await store.save('slanted-seam', progress('b'));
    expect(backend.texts.get('slanted-seam:unreadable')).toBe(text);
  });
});

function fail(notice: Notice): void {
  throw new Error(`unexpected notice ${JSON.stringify(notice)}`);
}
