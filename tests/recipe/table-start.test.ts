import { describe, expect, it, vi } from 'vitest';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import type { BlockForm } from '../../src/lib/pattern/block.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import { haveBlock, tableFor } from '../../src/lib/recipe/table-start.ts';
import type { BlockChoice } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from './sample.ts';

const FORMS: readonly (BlockForm | undefined)[] = [undefined, 'side', 'two-dart', 'waist'];
const choices = Object.keys(FIGURES).flatMap((figure) =>
  FORMS.map((form): BlockChoice => (form === undefined ? { figure } : { figure, form })),
);
const throughJson = <T>(data: T): T => JSON.parse(JSON.stringify(data)) as T;

/** The same file without whatever drafts. */
async function alone() {
  vi.resetModules();
  return import('../../src/lib/recipe/table-start.ts');
}

describe('the block that a page hands in', () => {
  it.each(choices)('has the same bits as the one drafted: $figure $form', async (choice) => {
    const fresh = await alone();
    fresh.haveBlock(choice, throughJson(startWork(choice).block));
    // Numbers are compared by Object.is, which tells 0 from −0.
    expect(fresh.tableFor(choice)).toEqual(startWork(choice));
  });

  it('leads to the same bits when a lesson is worked on it', async () => {
    const sample = sampleAttempt('F2', 'knit');
    const fresh = await alone();
    // Every phase by itself: all of them together bring what drafts.
    for (const phase of [
      'block',
      'open',
      'legs',
      'line',
      'marks',
      'cut',
      'proof',
      'treat',
      'finish',
    ] as const)
      await import(`../../src/lib/recipe/commands/${phase}.ts`);
    const { replay: replayAlone } = await import('../../src/lib/recipe/replay.ts');
    expect(() => replayAlone(sample)).toThrow(/not handed in/);
    fresh.haveBlock(sample.block, throughJson(startWork(sample.block).block));
    const { work, unfollowed } = replayAlone(sample);
    expect(unfollowed).toEqual([]);
    expect(work).toEqual(replay(sample).work);
  });

  it('is asked for under its own figure and form only', async () => {
    const fresh = await alone();
    fresh.haveBlock({ figure: 'F2', form: 'waist' }, startWork({ figure: 'F2', form: 'waist' }).block);
    for (const other of [
      { figure: 'F2' },
      { figure: 'F3', form: 'waist' },
      { measures: FIGURES.F2 },
    ] as const)
      expect(() => fresh.tableFor(other)).toThrow(/not handed in/);
  });

  it('is not kept when it is of own measures', async () => {
    const fresh = await alone();
    const own = { measures: { bust: 900, waist: 700, napeToWaist: 380 } };
    fresh.haveBlock(own, startWork(own).block);
    expect(() => fresh.tableFor(own)).toThrow(/not handed in/);
  });

  it('gives way to what drafts, once that is there', () => {
    haveBlock({ figure: 'F2' }, startWork({ figure: 'F5' }).block);
    expect(tableFor({ figure: 'F2' })).toEqual(startWork({ figure: 'F2' }));
    expect(() => tableFor({ figure: 'F9' })).toThrow(RangeError);
  });
});
