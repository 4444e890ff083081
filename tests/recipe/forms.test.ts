import { describe, expect, it } from 'vitest';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import '../../src/lib/recipe/commands/index.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { replayDocument } from '../../src/lib/recipe/document.ts';
import { parseRecipe } from '../../src/lib/recipe/parse.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { BlockChoice, Command, Recipe, Work } from '../../src/lib/recipe/types.ts';

const recipe = (block: BlockChoice, commands: readonly Command[] = []): Recipe => ({
  format: 'pin-and-pivot/recipe',
  version: 1,
  block,
  fabric: 'knit',
  seed: 0,
  commands,
});

function done(work: Work, ...commands: readonly Command[]): Work {
  let now = work;
  for (const command of commands) {
    const next = apply(now, command);
    if ('refused' in next) throw new Error(`${command.do} refused: ${JSON.stringify(next.refused)}`);
    now = next.work;
  }
  return now;
}

const LINE: Command = {
  do: 'draw-line',
  line: 'line',
  points: [
    { on: 'right/shoulder', at: 0.5 },
    { landmark: 'right/bust-point', dx: 20, dy: 0 },
    { on: 'right/waist-inner', at: 0.5 },
  ],
};

describe('a block in a form', () => {
  it('is the paper to work on when the form is given, and is opened out as before when it is not', () => {
    for (const form of ['side', 'two-dart', 'waist'] as const) {
      const start = startWork({ figure: 'F2', form });
      expect(start.opened).toBe(start.pieces[0]);
    }
    const plain = startWork({ figure: 'F2' });
    expect(plain.opened).toBeUndefined();
    expect({ ...startWork({ figure: 'F2', form: 'side' }), opened: undefined }).toEqual(plain);
    expect(apply(plain, LINE)).toEqual({ refused: { code: 'not-opened' } });
  });

  it('takes a line on the half front, and can still be opened out before', () => {
    const start = startWork({ figure: 'F2', form: 'waist' });
    const lined = done(start, LINE);
    expect(lined.lines[0]!.ends).toEqual(['right/shoulder', 'right/waist-inner']);
    expect(apply(lined, { do: 'open-out', about: 'centre-front' })).toHaveProperty('refused.code');
    const opened = done(start, { do: 'open-out', about: 'centre-front' });
    expect(opened.opened!.parts[0]!.edges.some((e) => e.id === 'left/waist-inner')).toBe(true);
    done(opened, LINE, { ...LINE, line: 'line-2' });
  });

  it('goes into a file and comes back, in one order of keys, and is told in the replay document', () => {
    const blocks: readonly BlockChoice[] = [
      { figure: 'F4', form: 'two-dart' },
      { measures: FIGURES.F3, form: 'waist' },
      { figure: 'F1' },
    ];
    for (const block of blocks) {
      const given = recipe(block, block.form === 'waist' ? [LINE] : []);
      const text = toText(given);
      const parsed = parseRecipe(text);
      if (!('ok' in parsed)) throw new Error(JSON.stringify(parsed.problems));
      expect(parsed.ok).toEqual(given);
      expect(toText(parsed.ok)).toBe(text);
      const document = replayDocument(parsed.ok) as { block: { chosen: BlockChoice }; unfollowed: unknown[] };
      expect(document.block.chosen).toEqual(block);
      expect(document.unfollowed).toEqual([]);
    }
    expect(toText(recipe({ form: 'waist', figure: 'F1' }))).toContain(
      '"block": {\n    "figure": "F1",\n    "form": "waist"\n  }',
    );
    const odd = parseRecipe(toText(recipe({ figure: 'F1', form: 'french' as 'waist' })));
    expect('problems' in odd && odd.problems[0]!.path).toBe('block.form');
  });

  it('is what attempts of a lesson with a form start with', () => {
    expect(blockOf({ figure: 'F2' })).toEqual({ figure: 'F2' });
    expect(blockOf({ figure: 'F2', form: 'waist' })).toEqual({ figure: 'F2', form: 'waist' });
  });
});
