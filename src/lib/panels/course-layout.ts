import { linkVertical } from 'd3-shape';

/** What the course map needs to know of a lesson. */
export interface CourseLesson {
  readonly id: string;
  readonly number?: number | undefined;
  readonly needs: readonly string[];
}

/** A line of the map, from a lesson to one that builds on it. */
export interface CourseLink {
  readonly from: string;
  readonly to: string;
  readonly d: string;
}

/** Where everything lies on the map: rows and columns counted from 0; a column is the width of one lesson and may be a half one. */
export interface CourseLayout {
  readonly columns: number;
  readonly rows: number;
  readonly spots: ReadonlyMap<string, { readonly row: number; readonly column: number }>;
  readonly links: readonly CourseLink[];
}

/** Lessons in one row at most: as many as can be read side by side. */
const MOST = 4;
/** Where a line leaves and enters a row, of the row's height: lines are bent only between the lessons. */
const EDGE = 0.14;
/** How far lines that share a gap keep apart, of a lesson's width. */
const APART = 0.025;

/** Lessons in the order they are taught in: by number, those without one last, by id. */
export const inOrder = <L extends CourseLesson>(lessons: readonly L[]): L[] =>
  [...lessons].sort((a, b) => (a.number ?? 1e3) - (b.number ?? 1e3) || (a.id < b.id ? -1 : 1));

/** The lessons that `id` builds on, near and far, among those there are; without itself. Ends on a circle, too. */
export function builtOn(lessons: readonly CourseLesson[], id: string): ReadonlySet<string> {
  const byId = new Map(lessons.map((lesson) => [lesson.id, lesson]));
  const found = new Set<string>();
  const look = (of: string): void => {
    for (const need of byId.get(of)?.needs ?? []) {
      if (need === id || found.has(need) || !byId.has(need)) continue;
      found.add(need);
      look(need);
    }
  };
  look(id);
  return found;
}

/** What a lesson needs itself: needs that another of its needs has as well are not told twice, those that are not there not at all. */
export function directNeeds(lessons: readonly CourseLesson[], lesson: CourseLesson): readonly string[] {
  const there = lesson.needs.filter((need) => lessons.some(({ id }) => id === need));
  return there.filter((need) => !there.some((other) => other !== need && builtOn(lessons, other).has(need)));
}

/**
 * The map of a course: each lesson in a row below all that it builds on, at most four in a row, lines through the gaps between
 * them. Lengths are in lessons: one unit across is a column, one unit down is a row.
 */
export function courseLayout(lessons: readonly CourseLesson[]): CourseLayout {
  const ordered = inOrder(lessons);
  const rows = rowsOf(ordered);
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const spots = new Map<string, { row: number; column: number }>();
  rows.forEach((row, r) => {
    const parents = (id: string): readonly string[] => {
      const lesson = ordered.find((one) => one.id === id);
      return lesson ? directNeeds(ordered, lesson) : [];
    };
    const wish = (id: string): number => {
      const at = parents(id).map((need) => spots.get(need)?.column ?? 0);
      return at.length === 0 ? 0 : at.reduce((sum, x) => sum + x, 0) / at.length;
    };
    // A stable sort: lessons under the same one stay in the order of the course.
    [...row]
      .sort((a, b) => wish(a) - wish(b))
      .forEach((id, i) => spots.set(id, { row: r, column: (columns - row.length) / 2 + i }));
  });
  return { columns, rows: rows.length, spots, links: linksOf(ordered, rows, spots, columns) };
}

/** Ids by row: each lesson as high up as what it builds on and the room in the rows allow. */
function rowsOf(ordered: readonly CourseLesson[]): string[][] {
  const rows: string[][] = [];
  const rowOf = new Map<string, number>();
  const put = (lesson: CourseLesson, above: ReadonlySet<string>): void => {
    if (rowOf.has(lesson.id) || above.has(lesson.id)) return;
    const needed = ordered.filter(({ id }) => lesson.needs.includes(id));
    for (const need of needed) put(need, new Set([...above, lesson.id]));
    let row = Math.max(0, ...needed.map(({ id }) => (rowOf.get(id) ?? -1) + 1));
    while ((rows[row]?.length ?? 0) >= MOST) row += 1;
    rowOf.set(lesson.id, row);
    (rows[row] ??= []).push(lesson.id);
  };
  for (const lesson of ordered) put(lesson, new Set());
  return rows.map((row) => row ?? []);
}

/** A thousandth of a lesson is finer than any screen shows. */
const round = (value: number): number => Math.round(value * 1000) / 1000;

type Spots = ReadonlyMap<string, { readonly row: number; readonly column: number }>;

function linksOf(
  ordered: readonly CourseLesson[],
  rows: readonly (readonly string[])[],
  spots: Spots,
  columns: number,
): CourseLink[] {
  const curve = linkVertical<unknown, readonly [number, number]>().digits(3);
  const used = new Map<string, number>();
  /** The gap of a row nearest to `x`; lines in the same one lie side by side. */
  function gap(row: number, x: number): number {
    const count = rows[row]!.length;
    const first = (columns - count) / 2;
    const nearest = Math.max(first, Math.min(first + count, Math.round(x - first) + first));
    const key = `${row} ${nearest}`;
    const taken = used.get(key) ?? 0;
    used.set(key, taken + 1);
    // Alternately to both sides of the middle.
    return nearest + (taken % 2 === 0 ? 1 : -1) * Math.ceil(taken / 2) * APART;
  }
  return ordered.flatMap((lesson) =>
    directNeeds(ordered, lesson).flatMap((need): CourseLink[] => {
      const [from, to] = [spots.get(need), spots.get(lesson.id)];
      if (!from || !to || to.row <= from.row) return [];
      const [start, end] = [from.column + 0.5, to.column + 0.5];
      let at: readonly [number, number] = [start, from.row + 1 - EDGE];
      let d = `M${round(start)},${from.row + 0.5}V${round(at[1])}`;
      const bend = (x: number, y: number): void => {
        // The curve begins where the line is already.
        d += (curve({ source: at, target: [x, y] }) ?? '').replace(/^M[^CL]*/, '');
        at = [x, y];
      };
      for (let row = from.row + 1; row < to.row; row += 1) {
        const x = gap(row, start + ((end - start) * (row - from.row)) / (to.row - from.row));
        bend(x, row + EDGE);
        d += `V${round(row + 1 - EDGE)}`;
        at = [x, row + 1 - EDGE];
      }
      bend(end, to.row + EDGE);
      return [{ from: need, to: lesson.id, d: `${d}V${to.row + 0.5}` }];
    }),
  );
}
