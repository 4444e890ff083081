import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { compareWithPaper } from '../../src/lib/grading/paper.ts';
import { measurable } from '../../src/lib/grading/paper-items.ts';
import { isAngle } from '../../src/lib/grading/paper-value.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { paperTables } from '../../src/lib/lessons/worked/for-paper.ts';
import { bent, drawingOf } from '../../src/lib/panels/paper/figure.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import { measured } from '../print/sheet.ts';

const at = (id: string, step: string) => {
  const lesson = loadLesson(id)!;
  const fabric = lesson.fabrics[0]!;
  const { before, worked } = paperTables(lesson, new Map(), step, startWork(blockOf(lesson)), fabric);
  const items = measurable(before, worked, fabric);
  return { worked, items, fabric };
};

describe.each(lessonIds())('the drawings of where to measure, in %s', (id) => {
  it('mark each length as long as it is expected (measured by paper.js), with its number in the drawing', () => {
    for (const { id: step } of loadLesson(id)!.steps) {
      const { worked, items, fabric } = at(id, step);
      for (const piece of worked.pieces) {
        const own = items.filter((item) => item.piece === piece.id);
        if (own.length === 0) continue;
        const { marks, viewBox, ring } = drawingOf(piece, own);
        // No number covers another.
        marks.forEach((mark, i) =>
          marks.slice(0, i).forEach((other) => {
            const apart = Math.hypot(mark!.at.x - other!.at.x, mark!.at.y - other!.at.y);
            expect(apart, `${step}: ${own[i]!.what} ${own[i]!.about}`).toBeGreaterThan(2 * ring);
          }),
        );
        const [x, y, width, height] = viewBox.split(' ').map(Number) as [number, number, number, number];
        own.forEach((item, i) => {
          const mark = marks[i]!;
          expect(mark, `${step}: ${item.what} ${item.about}`).toBeDefined();
          expect(mark.at.x - x).toBeGreaterThan(0);
          expect(mark.at.y - y).toBeGreaterThan(0);
          expect(x + width - mark.at.x).toBeGreaterThan(0);
          expect(y + height - mark.at.y).toBeGreaterThan(0);
          if (isAngle(item.what) || item.what === 'allowance-width') return;
          const [finding] = compareWithPaper(worked, [{ ...item, value: 1 }], fabric);
          expect(measured(mark.d).length / 2).toBeCloseTo(finding!.expected as number, 2);
        });
      }
    }
  });
});

it('legs that bend at an alternate pivot are told of, straight ones are not', () => {
  const angles = (id: string, step: string) => {
    const { worked, items } = at(id, step);
    return items
      .filter(({ what }) => what === 'dart-angle')
      .map((item) =>
        bent(
          worked.pieces.find(({ id }) => id === item.piece)!,
          item,
        ),
      );
  };
  expect(angles('parallel-darts', 'move')).toEqual([true, true]);
  expect(angles('waist-to-side', 'move')).toEqual([false]);
});
