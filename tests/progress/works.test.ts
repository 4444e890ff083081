import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { LESSONS, lessonIds } from '../../src/cli/load-lessons.ts';
import { benchLesson, BENCH, fromBench, toBench } from '../../src/lib/lessons/bench.ts';
import { lessonMachine } from '../../src/lib/machines/lesson.ts';
import { attemptOf } from '../../src/lib/machines/lesson-context.ts';
import type { Notice } from '../../src/lib/progress/store.ts';
import { asName, parseWork, workToText, type KeptWork } from '../../src/lib/progress/works.ts';
import { worksStore, type WorksBackend } from '../../src/lib/progress/works-store.ts';
import '../../src/lib/recipe/commands/index.ts';
import { replayDocument } from '../../src/lib/recipe/document.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import '../../src/lib/recipe/start.ts';
import { parseRecipe } from '../../src/lib/recipe/parse.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import type { Command, Recipe } from '../../src/lib/recipe/types.ts';
import { createActor } from 'xstate';

vi.setConfig({ testTimeout: 120_000 });

const recipe: Recipe = {
  format: 'pin-and-pivot/recipe',
  version: 1,
  block: { figure: 'F2', form: 'side' },
  fabric: 'woven',
  seed: 0,
  commands: [{ do: 'extend-dart', dart: 'right', to: { landmark: 'right/bust-point', dx: 0.1 + 0.2 } }],
};
const work = (id: string, change: Partial<KeptWork> = {}): KeptWork => ({
  id,
  name: `Work ${id}`,
  at: 1_700_000_000_000,
  binned: false,
  recipe,
  ...change,
});

interface Shelf extends WorksBackend {
  readonly texts: Map<string, string>;
}
function shelf(texts = new Map<string, string>()): Shelf {
  return {
    texts,
    all: async () => [...texts],
    put: async (id, text) => void texts.set(id, text),
    remove: async (id) => void texts.delete(id),
  };
}
const fail = (notice: Notice): never => {
  throw new Error(JSON.stringify(notice));
};
const storeOn = (backend: WorksBackend, onNotice: (notice: Notice) => void = fail) =>
  worksStore(async () => backend, onNotice);

describe('a kept work', () => {
  it('comes back as it was', () => {
    expect(parseWork(workToText(work('a')))).toEqual({ ok: work('a') });
  });

  it('knows the own measures that it lay on, and takes none that no block can be drafted from', () => {
    const own = { bust: 900, waist: 700.1, napeToWaist: 15.5 * 25.4 };
    expect(parseWork(workToText(work('a', { own })))).toEqual({ ok: work('a', { own }) });
    const bad = parseWork(workToText(work('a', { own: { ...own, bust: 20 } })));
    expect(bad).toMatchObject({ problems: [{ path: expect.stringMatching(/^own/) }] });
  });

  it.each([
    ['no JSON', 'a pin', /^$/, /JSON/],
    [
      'an unknown key',
      JSON.stringify({ ...JSON.parse(workToText(work('a'))), owner: 'x' }),
      /owner/,
      /no such key/,
    ],
    ['a newer version', workToText(work('a')).replace('"version":1', '"version":9'), /version/, /1/],
    ['an unknown command', workToText(work('a')).replace('extend-dart', 'fly'), /recipe\.commands\[0\]/, /./],
    [
      'a name that is none',
      JSON.stringify({ ...JSON.parse(workToText(work('a'))), name: 7 }),
      /name/,
      /string/,
    ],
  ])('with %s is refused whole, and it is said where', (_what, text, path, expected) => {
    const parsed = parseWork(text);
    if ('ok' in parsed) throw new Error('it was read');
    expect(parsed.problems[0]!.path).toMatch(path);
    expect(parsed.problems[0]!.expected).toMatch(expected);
  });

  it('is called by one line without spaces around it, short enough for a label', () => {
    expect(asName('  a \n\t b ')).toBe('a b');
    expect(asName('   ')).toBe('');
    expect([...asName('✂'.repeat(300))]).toHaveLength(40);
    expect(parseWork(workToText(work('a', { name: asName('✂️🪡'.repeat(300)) })))).toHaveProperty('ok');
  });
});

describe('the shelf', () => {
  it('gives back what was kept, the last one worked on first, and keeps one text for each work', async () => {
    const backend = shelf();
    const store = storeOn(backend);
    await store.keep(work('a', { at: 1 }));
    await store.keep(work('b', { at: 3 }));
    await store.keep(work('a', { at: 2, name: 'Again' }));
    expect((await storeOn(backend).all()).map(({ id, name }) => [id, name])).toEqual([
      ['b', 'Work b'],
      ['a', 'Again'],
    ]);
    expect(backend.texts.size).toBe(2);
  });

  it('takes a work out of the bin as it was, and only empties it for good', async () => {
    const backend = shelf();
    const store = storeOn(backend);
    await store.keep(work('a', { binned: true }));
    await store.keep(work('a'));
    expect(await storeOn(backend).all()).toEqual([work('a')]);
    await store.remove('a');
    expect(await storeOn(backend).all()).toEqual([]);
    expect(await store.all()).toEqual([]);
  });

  it('keeps the newest of several that overlap', async () => {
    const backend = shelf();
    const put = backend.put;
    backend.put = async (id, text) => {
      await new Promise((done) => setTimeout(done, 3));
      await put(id, text);
    };
    const store = storeOn(backend);
    await Promise.all(['one', 'two', 'three'].map((name) => store.keep(work('a', { name }))));
    expect((await storeOn(backend).all())[0]!.name).toBe('three');
  });

  it('leaves a text that cannot be read where it is, says so once, and gives the others', async () => {
    const backend = shelf(
      new Map([
        ['x', 'pins'],
        ['y', 'needles'],
        ['a', workToText(work('a'))],
      ]),
    );
    const notices: Notice[] = [];
    const store = storeOn(backend, (notice) => notices.push(notice));
    expect(await store.all()).toEqual([work('a')]);
    expect(await store.all()).toEqual([work('a')]);
    expect(notices).toMatchObject([{ kind: 'corrupted', text: 'pins' }]);
    expect(backend.texts.get('x')).toBe('pins');
  });

  it.each([
    ['SecurityError', 'forbidden'],
    ['QuotaExceededError', 'full'],
    ['BlockedError', 'otherVersion'],
  ])('that fails with a %s says once that it is %s, and work goes on in memory', async (name, kind) => {
    const backend = shelf();
    let broken = true;
    const open = async (): Promise<WorksBackend> => {
      if (broken) throw Object.assign(new Error('no'), { name });
      return backend;
    };
    const notices: Notice[] = [];
    const store = worksStore(open, (notice) => notices.push(notice));
    await store.keep(work('a'));
    await store.keep(work('b', { at: 5 }));
    expect((await store.all()).map(({ id }) => id)).toEqual(['a', 'b']);
    await store.remove('a');
    expect((await store.all()).map(({ id }) => id)).toEqual(['b']);
    expect(notices).toEqual([{ kind }]);
    // Once storage is there again, what is kept next gets there.
    broken = false;
    await store.keep(work('b', { name: 'Kept' }));
    expect((await storeOn(backend).all())[0]!.name).toBe('Kept');
  });
});

// Source: the project's own rule, the same recipe gives the same bits; held against the replay of the recipe that was never kept.
it('every attempt of every lesson replays to the same bytes once it was kept, opened, saved and opened again', () => {
  let compared = 0;
  for (const id of lessonIds())
    for (const name of readdirSync(join(LESSONS, id), { recursive: true }).map(String)) {
      if (!/pass-.*\.attempt\.json$/.test(name)) continue;
      const parsed = parseRecipe(readFileSync(join(LESSONS, id, name), 'utf8'));
      if ('problems' in parsed) throw new Error(name);
      const kept = parseWork(workToText(work('a', { recipe: fromBench(toBench(parsed.ok)) })));
      if ('problems' in kept) throw new Error(JSON.stringify(kept.problems));
      const machine = lessonMachine(benchLesson, () => ({ step: BENCH, verdict: 'notReady', findings: [] }));
      const input = { attempt: toBench(kept.ok.recipe), step: BENCH, demonstrationSeen: true };
      const { context } = createActor(machine, { input }).start().getSnapshot();
      const saved = parseRecipe(toText(fromBench(attemptOf(context))));
      if ('problems' in saved) throw new Error(JSON.stringify(saved.problems));
      // A walk is listed with the lesson's step it was given in, which is nothing on the bench; all else is the attempt's own.
      const bare = {
        ...parsed.ok,
        commands: parsed.ok.commands.map(({ step: _, ...one }) => one as Command),
      };
      const [was, is] = [bare, saved.ok].map((one) => JSON.stringify(replayDocument(one)));
      expect(is === was, `${id}/${name}`).toBe(true);
      // What lies on the bench is the same table, too.
      expect(
        JSON.stringify(context.steps.get(BENCH)!.after.pieces) === JSON.stringify(piecesOf(parsed.ok)),
      ).toBe(true);
      compared += 1;
    }
  expect(compared).toBeGreaterThan(100);
});

const piecesOf = (one: Recipe): unknown => replay(one).work.pieces;
