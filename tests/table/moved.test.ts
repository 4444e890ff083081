import { describe, expect, it } from 'vitest';
import { TOOLS } from '../../src/lib/machines/tools/index.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { replayByStep } from '../../src/lib/recipe/replay.ts';
import type { Command, Work } from '../../src/lib/recipe/types.ts';
import { scenesOf } from '../../src/lib/table/replay.ts';
import { pieceModel, type Drawn } from '../../src/lib/table/model.ts';
import { movedLines } from '../../src/lib/table/moved.ts';
import { turnedParts } from '../../src/lib/table/turned.ts';
import '../../src/lib/table/phases/cut.ts';
import '../../src/lib/table/phases/finish.ts';
import { landmark, sampleAttempt, STEPS } from '../recipe/sample.ts';

const steps = replayByStep(sampleAttempt('F3', 'woven'), STEPS);
const flat = (strokes: readonly Drawn[]): string[] =>
  strokes.map(({ key, stroke, d }) => `${key} ${stroke} ${d}`).sort();
/** All that is drawn of a piece, in words. */
function drawn(work: Work, id: string, besides: readonly Drawn[] = []): unknown {
  const { parts, strokes, ...rest } = pieceModel(work.pieces.find((piece) => piece.id === id)!);
  const fills = parts.map((part) => [part.id, part.fill]);
  return {
    ...rest,
    fills,
    strokes: flat([...parts.flatMap((part) => part.strokes), ...strokes, ...besides]),
  };
}
/** Draws the line anew with its point 1 moved by some mm. */
function redrawn(work: Work, by: number): Work {
  const { id, points } = work.lines[0]!;
  const scene = { work, fabric: 'knit' as const, options: {}, reach: 1 };
  const at = { x: points[1]!.x + by, y: points[1]!.y + by / 2 };
  const grip = { target: 'point:1', from: points[1]!, at, how: 'carry' as const };
  const proposal = TOOLS['draw-line'].propose(scene, grip);
  const applied = apply(work, (proposal as { command: Command }).command);
  if (!('work' in applied)) throw new Error(`${id}: ${applied.refused.code}`);
  return applied.work;
}

describe('movedLines', () => {
  it('shows the same as the work itself, whatever command was given', () => {
    let shown = 0;
    for (const id of STEPS) {
      const { before, commands } = steps.get(id)!;
      for (const scene of scenesOf(before, commands)) {
        const moved = movedLines(scene.before, scene.after);
        if (!moved) continue;
        shown++;
        for (const piece of scene.after.pieces)
          expect(drawn(moved.still, piece.id, piece.id === moved.piece ? moved.strokes : [])).toEqual(
            drawn(scene.after, piece.id),
          );
        expect(moved.still.placed).toBe(scene.after.placed);
      }
    }
    // The line, its four notches and two connectors.
    expect(shown).toBe(7);
  });

  it.each(['style-line', 'notches', 'connectors'] as const)(
    'leaves what stands still the same object from move to move, after %s',
    (id) => {
      const before = steps.get(id)!.after;
      const moves = [3, 5, 8].map((by) => ({ after: redrawn(before, by), by }));
      const all = moves.map(({ after }) => movedLines(before, after)!);
      for (const [i, { after }] of moves.entries()) {
        expect(all[i]!.still).toBe(all[0]!.still);
        expect(drawn(all[i]!.still, 'front', all[i]!.strokes)).toEqual(drawn(after, 'front'));
      }
      expect(new Set(all.map(({ strokes }) => strokes[0]!.d)).size).toBe(3);
    },
  );

  it('is nothing when more than lines came about', () => {
    const { before, after } = steps.get('first-dart')!;
    expect(movedLines(before, after)).toBeUndefined();
    expect(movedLines(before, before)).toBeUndefined();
    expect(movedLines(steps.get('separate')!.before, steps.get('separate')!.after)).toBeUndefined();
  });
});

describe('turnedParts', () => {
  it('moves what is drawn to where the turned parts lie', () => {
    const { before, commands } = steps.get('first-dart')!;
    const scene = scenesOf(before, commands).find(({ command }) => command.do === 'turn')!;
    const moves = Object.entries(turnedParts(scene.before, scene.after)!);
    expect(moves.length).toBeGreaterThan(0);
    for (const [id, matrix] of moves) {
      const [a, b, c, d, e, f] = matrix.slice(7, -1).split(' ').map(Number) as [
        number,
        number,
        number,
        number,
        number,
        number,
      ];
      const part = ({ pieces }: Work) => pieces[0]!.parts.find((one) => one.id === id)!;
      const [was, is] = [part(scene.before), part(scene.after)];
      for (const [i, edge] of was.edges.entries()) {
        const { x, y } = edge.chain[0]!.a;
        const to = is.edges[i]!.chain[0]!.a;
        // Five digits in the matrix, and places up to half a metre from the origin.
        expect(Math.hypot(a * x + c * y + e - to.x, b * x + d * y + f - to.y)).toBeLessThan(0.02);
      }
    }
    const still = scene.after.pieces[0]!.parts.filter(({ id }) => !moves.some(([one]) => one === id));
    expect(still.length).toBeGreaterThan(0);
    for (const one of still)
      expect(one.edges).toEqual(scene.before.pieces[0]!.parts.find(({ id }) => id === one.id)!.edges);
    expect(landmark(scene.after, 'right/bust-point')).toEqual(landmark(scene.before, 'right/bust-point'));
  });
});
