import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { courseLayout } from '../../src/lib/panels/course-layout.ts';
import { builtOn, directNeeds, inOrder, type CourseLesson } from '../../src/lib/panels/course-needs.ts';

const lesson = (id: string, needs: readonly string[] = [], number?: number): CourseLesson => ({
  id,
  needs,
  ...(number !== undefined && { number }),
});

/** Random courses in which a lesson needs only earlier ones, or ones that are not there. */
const courses = fc.array(fc.array(fc.nat(40), { maxLength: 4 }), { minLength: 1, maxLength: 24 }).map((all) =>
  all.map((needs, i) =>
    lesson(
      `l${i}`,
      [...new Set(needs)].map((n) => (n < i ? `l${n}` : `none-${n}`)),
      i + 1,
    ),
  ),
);

/** Straight lines between lessons that cross, each pair once. */
function crossings(course: readonly CourseLesson[]): number {
  const { links, spots } = courseLayout(course);
  const lines = links.map(({ from, to }) => ({ a: spots.get(from)!, b: spots.get(to)! }));
  const cross = (p: Spot, q: Spot, r: Spot): number =>
    (q.column - p.column) * (r.row - p.row) - (q.row - p.row) * (r.column - p.column);
  let count = 0;
  lines.forEach((one, i) =>
    lines.slice(i + 1).forEach((two) => {
      const sides = [
        cross(one.a, one.b, two.a) * cross(one.a, one.b, two.b),
        cross(two.a, two.b, one.a) * cross(two.a, two.b, one.b),
      ];
      if (sides.every((side) => side < 0)) count += 1;
    }),
  );
  return count;
}
type Spot = { readonly row: number; readonly column: number };

describe('the map of a course', () => {
  it('untangles lines that need not cross', () => {
    const course = [
      lesson('a', [], 1),
      ...['b', 'c', 'd', 'e'].map((id, i) => lesson(id, ['a'], 2 + i)),
      // Taken in the order of their numbers, every line would cross the three others.
      ...['f', 'g', 'h', 'i'].map((id, i) => lesson(id, ['edcb'[i]!], 6 + i)),
    ];
    expect(crossings(course)).toBe(0);
  });

  it('ends with the last lesson of the course, in a row of its own, where it builds on others', () => {
    const course = [
      lesson('a', [], 1),
      lesson('b', ['a'], 2),
      lesson('c', ['b'], 3),
      lesson('d', ['c'], 4),
      lesson('e', ['a'], 5),
    ];
    const { spots, rows } = courseLayout(course);
    expect(spots.get('e')).toEqual({ row: rows - 1, column: 0 });
    expect(rows).toBe(5);
  });

  it('is empty without lessons', () => {
    expect(courseLayout([])).toMatchObject({ columns: 0, rows: 0, links: [] });
  });

  it('puts one lesson alone, whatever it needs that is not there', () => {
    const { spots, links } = courseLayout([lesson('a', ['gone', 'a'])]);
    expect(spots.get('a')).toEqual({ row: 0, column: 0 });
    expect(links).toEqual([]);
  });

  it('ends on lessons that need each other', () => {
    const course = [lesson('a', ['b'], 1), lesson('b', ['a'], 2)];
    expect(courseLayout(course).spots.size).toBe(2);
    expect([...builtOn(course, 'a')]).toEqual(['b']);
  });

  it('has each lesson once, below what it builds on, beside no more than three others and on none', () => {
    fc.assert(
      fc.property(courses, (course) => {
        const { spots, rows, columns } = courseLayout(course);
        expect([...spots.keys()].sort()).toEqual(course.map(({ id }) => id).sort());
        for (const { id, needs } of course)
          for (const need of needs)
            if (spots.has(need)) expect(spots.get(id)!.row).toBeGreaterThan(spots.get(need)!.row);
        for (let r = 0; r < rows; r += 1) {
          const row = [...spots.values()]
            .filter((spot) => spot.row === r)
            .map(({ column }) => column)
            .sort((a, b) => a - b);
          expect(row.length).toBeGreaterThan(0);
          expect(row.length).toBeLessThanOrEqual(4);
          expect(row[0]).toBeGreaterThanOrEqual(0);
          expect(row.at(-1)! + 1).toBeLessThanOrEqual(columns);
          row.slice(1).forEach((column, i) => expect(column - row[i]!).toBe(1));
        }
      }),
    );
  });

  it('draws a line for each need that no other need has, and following the lines gives all that a lesson builds on', () => {
    fc.assert(
      fc.property(courses, (course) => {
        const { links } = courseLayout(course);
        const above = (id: string): string[] =>
          links.filter(({ to }) => to === id).flatMap(({ from }) => [from, ...above(from)]);
        for (const one of course) {
          expect(new Set(above(one.id))).toEqual(builtOn(course, one.id));
          const direct = links.filter(({ to }) => to === one.id).map(({ from }) => from);
          expect(direct).toEqual(directNeeds(course, one));
          for (const need of direct)
            for (const other of direct)
              expect(other !== need && builtOn(course, other).has(need), `${need} ${other}`).toBe(false);
        }
      }),
    );
  });

  it('runs its lines through no lesson: in each row between, a line keeps to a gap', () => {
    fc.assert(
      fc.property(courses, (course) => {
        const { links, spots } = courseLayout(course);
        for (const { from, to, d } of links) {
          // The upright stretches: x of the point before, y where they end.
          const upright = [...d.matchAll(/([\d.]+),[\d.]+V([\d.]+)/g)].map((m) => [
            Number(m[1]),
            Number(m[2]),
          ]);
          const between = upright.filter(([, y]) => {
            const row = Math.floor(y!);
            return row > spots.get(from)!.row && row < spots.get(to)!.row;
          });
          expect(between).toHaveLength(spots.get(to)!.row - spots.get(from)!.row - 1);
          for (const [x, y] of between)
            for (const spot of spots.values())
              if (spot.row === Math.floor(y!)) {
                const inside = Math.min(x! - spot.column, spot.column + 1 - x!);
                expect(inside).toBeLessThan(0.3);
              }
        }
      }),
    );
  });
});

it('orders lessons by their number, those without one last', () => {
  const course = [lesson('z'), lesson('b', [], 2), lesson('a'), lesson('c', [], 1)];
  expect(inOrder(course).map(({ id }) => id)).toEqual(['c', 'b', 'a', 'z']);
});
