import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { lessonPicture, type PicturePiece } from '../../src/lib/print/lesson-picture.ts';
import { startWork } from '../../src/lib/recipe/start.ts';

type Point = readonly [x: number, y: number];

/** The points that a path names, through its own matrix. Read here by hand: only M, L, C and Z are written, all absolute. */
function points(d: string, { transform }: Pick<PicturePiece, 'transform'>): Point[] {
  const [a, b, c, e, f, g] = /^matrix\((.*)\)$/.exec(transform)![1]!.split(' ').map(Number) as number[];
  expect(d).toMatch(/^[MLCZ\d .-]+$/);
  const numbers = d.match(/-?\d+(\.\d+)?/g)!.map(Number);
  expect(numbers.length % 2).toBe(0);
  return Array.from({ length: numbers.length / 2 }, (_, i) => {
    const [x, y] = [numbers[2 * i]!, numbers[2 * i + 1]!];
    return [a! * x + c! * y + f!, b! * x + e! * y + g!];
  });
}
const boxOf = (all: readonly Point[]) => ({
  left: Math.min(...all.map(([x]) => x)),
  right: Math.max(...all.map(([x]) => x)),
  top: Math.min(...all.map(([, y]) => y)),
  bottom: Math.max(...all.map(([, y]) => y)),
});

describe.each(lessonIds())('the picture of what %s leads to', (id) => {
  const lesson = loadLesson(id)!;
  const fabric = lesson.fabrics[0]!;
  const { work, start } = workedLesson(lesson, fabric);
  const picture = lessonPicture(work, fabric);

  it('holds every line of every piece in its frame', () => {
    const [x, y, width, height] = picture.viewBox.split(' ').map(Number) as [number, number, number, number];
    expect(picture.pieces.length).toBeGreaterThan(0);
    for (const piece of picture.pieces)
      for (const d of [piece.paper, ...Object.values(piece.strokes)]) {
        const box = boxOf(points(d, piece));
        expect(box.left).toBeGreaterThanOrEqual(x);
        expect(box.top).toBeGreaterThanOrEqual(y);
        expect(box.right).toBeLessThanOrEqual(x + width);
        expect(box.bottom).toBeLessThanOrEqual(y + height);
      }
  });

  it('lays no piece on another', () => {
    const boxes = picture.pieces.map((piece) => boxOf(points(piece.paper, piece)));
    boxes.forEach((one, i) =>
      boxes.slice(i + 1).forEach((other) => {
        const apart =
          one.right <= other.left ||
          other.right <= one.left ||
          one.bottom <= other.top ||
          other.bottom <= one.top;
        expect(apart).toBe(true);
      }),
    );
  });

  it('shows the result, not the table that the lesson began with, where the lesson changes paper', () => {
    const before = JSON.stringify(lessonPicture(start, fabric));
    expect(JSON.stringify(picture) === before).toBe(id === 'reading-the-block');
  });

  it('is small enough to come with a page, and in whole millimetres with the map', () => {
    expect(JSON.stringify(picture).length).toBeLessThan(9_000);
    const tiny = lessonPicture(work, fabric, 0);
    expect(JSON.stringify(tiny).length).toBeLessThan(6_000);
    for (const { paper, strokes } of tiny.pieces)
      for (const d of [paper, ...Object.values(strokes)]) expect(d).not.toContain('.');
  });
});

it('is drawn to the size of the front as it was drafted: as high as from the neck point to the waist, as wide as to the underarm', () => {
  const work = startWork({ figure: 'F2' });
  const { pieces } = lessonPicture(work, 'woven');
  expect(pieces).toHaveLength(1);
  const { left, right, top, bottom } = boxOf(points(pieces[0]!.paper, pieces[0]!));
  const marks = work.block.front.parts[0]!.landmarks;
  expect(Math.abs(bottom - top - (marks['waist-centre']!.y - marks['right/neck-point']!.y))).toBeLessThan(
    0.2,
  );
  const outermost = Math.min(...Object.values(marks).map(({ x }) => x));
  expect(Math.abs(right - left - (0 - outermost))).toBeLessThan(0.2);
});
