import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { initialTransition, transition } from 'xstate';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { measuresOf, othersOf } from '../../src/lib/panels/measures.ts';
import { resultSheet } from '../../src/lib/print/result-sheet.ts';
import { replayByStep } from '../../src/lib/recipe/replay.ts';
import type { Attempt, CommandName, Fabric, Work } from '../../src/lib/recipe/types.ts';
import { pieceModel } from '../../src/lib/table/model.ts';
import { overlayOf } from '../../src/lib/table/overlay.ts';
import { spoken, targets } from '../../src/lib/table/targets.ts';
import { walkModel } from '../../src/lib/table/walk.ts';
import { targetsOf } from '../../src/lib/machines/holding.ts';
import type { ToolEvent } from '../../src/lib/machines/tool.ts';
import { TOOLS } from '../../src/lib/machines/tools/index.ts';
import { machineOf } from '../../src/lib/machines/tools/known.ts';
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

/** Takes everything up that the tools offer, moves it, and puts it down; presses on every piece. */
function handled(work: Work, fabric: Fabric, tools: readonly CommandName[]): void {
  const screen = { x: 0, y: 0 };
  const far = { x: 30, y: 12 };
  for (const tool of tools) {
    const machine = machineOf(TOOLS[tool]);
    const [start] = initialTransition(machine, { work, fabric, options: {}, reach: 5 });
    const presses: ToolEvent[] = work.pieces.flatMap((piece) =>
      piece.parts.map((part) => ({
        type: 'pointer.down',
        point: part.edges[0]!.chain[0]!.a,
        screen,
        over: { piece: piece.id, part: part.id },
      })),
    );
    const targeted: ToolEvent[] = targetsOf(TOOLS[tool], start.context.scene).flatMap(({ id, point }) => [
      { type: 'target.pick', target: id },
      { type: 'target.nudge', target: id, by: { x: 2, y: 1 } },
      { type: 'target.remove', target: id },
      { type: 'pointer.down', target: id, point, screen },
    ]);
    for (const event of [...presses, ...targeted]) {
      const [held] = transition(machine, start, event);
      const [moved] = transition(machine, held, { type: 'pointer.move', point: far, screen: far });
      expect(transition(machine, moved, { type: 'pointer.up' })[0].value).toMatch(/idle|carrying/);
    }
  }
}

function drawn(attempt: Attempt): void {
  const steps = replayByStep(attempt, ids);
  const works = new Map(lesson.steps.map((step) => [steps.get(step.id)!.after, step.tools] as const));
  for (const [work, tools] of works) {
    handled(work, attempt.fabric, tools as readonly CommandName[]);
    expect(shown(work, attempt.fabric, tools as readonly CommandName[])).not.toMatch(
      /NaN|undefined|Infinity/,
    );
  }
}

describe('can be drawn, told, printed and handled in every step', () => {
  it.each(Object.keys(ODD))('%s', (name) => drawn(ODD[name]!));

  it('any attempt that can be read, however odd', () => {
    expect(Object.keys(TOOLS).length).toBeGreaterThan(20);
    fc.assert(fc.property(oddAttempts, drawn), { numRuns: 25 });
  }, 120_000);
});
