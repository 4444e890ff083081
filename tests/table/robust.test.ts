import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { measuresOf, othersOf } from '../../src/lib/panels/measures.ts';
import { resultSheet } from '../../src/lib/print/result-sheet.ts';
import { replayByStep } from '../../src/lib/recipe/replay.ts';
import type { Attempt, CommandName, Fabric, Work } from '../../src/lib/recipe/types.ts';
import { pieceModel } from '../../src/lib/table/model.ts';
import { overlayOf } from '../../src/lib/table/overlay.ts';
import { spoken, targets } from '../../src/lib/table/targets.ts';
import { walkModel } from '../../src/lib/table/walk.ts';
import { TOOLS } from '../../src/lib/machines/tools/index.ts';
import { ODD, oddAttempts } from '../recipe/odd.ts';

const lesson = loadLesson('slanted-seam')!;
const ids = lesson.steps.map((step) => step.id);

/** All that is drawn, said and printed of a table, as text. */
function shown(work: Work, fabric: Fabric, tools: readonly CommandName[]): string {
  return JSON.stringify([
    work.pieces.map(pieceModel),
    work.pieces.map((piece) => measuresOf(piece, 'inch')),
    othersOf(work, 'mm'),
    overlayOf(work, work.pieces),
    tools.flatMap((tool) => targets(work, tool, { fabric, units: 'mm' }).map(spoken)),
    tools.includes('walk') && walkModel(work, fabric, {}, 'mm'),
    resultSheet(work, { fabric, units: 'mm', lessonTitle: lesson.title }),
  ]);
}

function drawn(attempt: Attempt): void {
  const steps = replayByStep(attempt, ids);
  const works = new Map(lesson.steps.map((step) => [steps.get(step.id)!.after, step.tools] as const));
  for (const [work, tools] of works)
    expect(shown(work, attempt.fabric, tools as readonly CommandName[])).not.toMatch(
      /NaN|undefined|Infinity/,
    );
}

describe('can be drawn, told and printed in every step', () => {
  it.each(Object.keys(ODD))('%s', (name) => drawn(ODD[name]!));

  it('any attempt that can be read, however odd', () => {
    expect(Object.keys(TOOLS).length).toBeGreaterThan(20);
    fc.assert(fc.property(oddAttempts, drawn), { numRuns: 40 });
  }, 120_000);
});
