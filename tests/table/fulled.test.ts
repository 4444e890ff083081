import { expect, it } from 'vitest';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { intersectChains } from '../../src/lib/geometry/intersect.ts';
import { line } from '../../src/lib/geometry/segment.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import '../../src/lib/recipe/commands/index.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { seenThrough } from '../../src/lib/table/fulled.ts';
import { partModel } from '../../src/lib/table/model.ts';

const lesson = loadLesson('gathers-tucks-ease')!;

/** The front once the openings are drawn over. */
function front() {
  const [fabric = 'woven'] = lesson.fabrics;
  const { commands } = workedLesson(lesson, fabric);
  const { work } = replay({
    ...{ format: 'pin-and-pivot/recipe', version: 1, seed: 0 },
    ...{ fabric, block: blockOf(lesson), commands },
  });
  return work.pieces.find(({ fullness }) => fullness)!;
}

it('old cut lines below a new edge are ghosts that end at it; no other line is changed', () => {
  const piece = front();
  const over = new Set(piece.fullness!.flatMap(({ darts }) => darts));
  const arches = piece.seam!.filter(({ id }) => piece.fullness!.some(({ edge }) => edge === id));
  let ghosts = 0;
  for (const part of piece.parts) {
    const before = partModel(part).strokes;
    for (const [i, stroke] of seenThrough(piece, part).strokes.entries()) {
      const edge = part.edges.find(({ id }) => id === stroke.key);
      if (edge?.role !== 'dart-leg' || !over.has(edge.dart!)) {
        expect(stroke).toEqual(before[i]);
        continue;
      }
      ghosts += 1;
      expect(stroke.stroke).toBe('ghost');
      const [a, b] = [...stroke.d.matchAll(/(-?[\d.]+)[ ,](-?[\d.]+)/g)].map(([, x, y]) => ({
        x: Number(x),
        y: Number(y),
      }));
      // Drawn numbers are rounded: a tenth of a millimetre inside both ends nothing is crossed.
      const inside = (t: number) => ({ x: a!.x + (b!.x - a!.x) * t, y: a!.y + (b!.y - a!.y) * t });
      const drawn = [line(inside(0.01), inside(0.99))];
      for (const arch of arches) expect(intersectChains(drawn, arch.chain)).toEqual([]);
    }
  }
  expect(ghosts).toBeGreaterThanOrEqual(2);
});
