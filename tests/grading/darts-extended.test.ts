import { describe, expect, it } from 'vitest';
import '../../src/lib/recipe/commands/index.ts';
import { dartsExtended } from '../../src/lib/grading/checks/darts-extended.ts';
import type { CheckSpec } from '../../src/lib/grading/types.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { sentence } from '../../src/lib/strings/sentence.ts';

/* The working dart runs to the bust point: common practice, as in trade.md. The block is of a demo figure, with a side dart and a waist dart. */

const block = { figure: 'F2', form: 'two-dart' } as const;
const asked = (darts: string[]): CheckSpec => ({
  check: 'darts-extended',
  names: { darts },
  tolerances: { tip: { value: 1.6, reason: 'pencil-line' } },
});
const drawnUp = (dart: string, dx = 0): Command =>
  ({ do: 'extend-dart', dart, to: { landmark: 'right/bust-point', ...(dx && { dx, dy: 0 }) } }) as Command;

function said(darts: string[], commands: Command[], given: Command[] = []): string[] {
  const of = (list: Command[]): Attempt => ({
    format: 'pin-and-pivot/recipe',
    version: 1,
    block,
    fabric: 'woven',
    seed: 1,
    lesson: { id: 'extend-a-dart', content: 1 },
    commands: list,
  });
  const attempt = of([...given, ...commands]);
  const { work: after, unfollowed } = replay(attempt);
  const before = given.length > 0 ? replay(of(given)).work : startWork(block);
  const context = { before, after, commands, unfollowed, fabric: 'woven' as const, attempt };
  return dartsExtended(context, asked(darts)).map(
    (finding) => `${finding.state}: ${sentence(finding, 'mm')}`,
  );
}

describe('the dart that was drawn up', () => {
  it('is named when it is another than the one asked for', () => {
    expect(said(['right/waist-dart'], [drawnUp('right')])).toEqual([
      'missing: The right waist dart is not drawn up to its bust point yet. Here the right side dart was drawn up, which is another one.',
    ]);
    expect(said(['right'], [drawnUp('right/waist-dart')])).toEqual([
      'missing: The right side dart is not drawn up to its bust point yet. Here the right waist dart was drawn up, which is another one.',
    ]);
  });

  it('is not spoken of when nothing was, when it was there before, or beside the right one', () => {
    const nothing = 'missing: The right waist dart is not drawn up to its bust point yet.';
    expect(said(['right/waist-dart'], [])).toEqual([nothing]);
    expect(said(['right/waist-dart'], [], [drawnUp('right')])).toEqual([nothing]);
    const both = said(['right/waist-dart'], [drawnUp('right'), drawnUp('right/waist-dart')]);
    expect(both).toHaveLength(1);
    expect(both[0]).toMatch(/^right: /);
    // Of two that are asked for, the one that is there already is no other.
    expect(said(['right', 'right/waist-dart'], [drawnUp('right')])[1]).toBe(nothing);
  });
});
