import { linkVertical } from 'd3-shape';
import { directNeeds, inOrder, type CourseLesson } from './course-needs.ts';

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

/**
 * The map of a course: each lesson in a row below all that it builds on, at most four in a row, the last one of the course at the
 * end; lines through the gaps between them. Lengths are in lessons: one unit across is a column, one unit down is a row.
 */
export function courseLayout(lessons: readonly CourseLesson[]): CourseLayout {
  const ordered = inOrder(lessons);
  const needs = new Map(ordered.map((lesson) => [lesson.id, directNeeds(ordered, lesson)]));
  const pairs = ordered.flatMap(({ id }) => (needs.get(id) ?? []).map((need) => [need, id] as const));
  const rows = untangled(rowsOf(ordered), pairs);
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const spots = spotsOf(rows);
  return { columns, rows: rows.length, spots, links: linksOf(pairs, rows, spots, columns) };
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
  return closedBy(ordered.at(-1), rows);
}

/** With the last lesson of the course in a row of its own at the end, where it builds on others: they all lead to it. */
function closedBy(last: CourseLesson | undefined, rows: readonly string[][]): string[][] {
  const at = rows.findIndex((row) => last && row.includes(last.id));
  if (!last || at < 1) return [...rows];
  const others = rows.map((row) => row.filter((id) => id !== last.id));
  return [...others.filter((row) => row.length > 0), [last.id]];
}

type Spots = ReadonlyMap<string, { readonly row: number; readonly column: number }>;
type Pairs = readonly (readonly [from: string, to: string])[];

/** Each row in the middle of the widest one. */
function spotsOf(rows: readonly (readonly string[])[]): Spots {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  return new Map(
    rows.flatMap((row, r) =>
      row.map((id, i) => [id, { row: r, column: (columns - row.length) / 2 + i }] as const),
    ),
  );
}

/** How often the map is gone through, down and up again. */
const ROUNDS = 8;

/** The rows with their lessons side by side so that few lines cross and lines are short: each nearest to what it is tied to. */
function untangled(rows: readonly (readonly string[])[], pairs: Pairs): readonly (readonly string[])[] {
  let now = rows;
  let best = rows;
  let least = tangle(rows, pairs);
  for (let round = 0; round < ROUNDS; round += 1) {
    const down = round % 2 === 0;
    for (let k = 0; k < now.length; k += 1) {
      const r = down ? k : now.length - 1 - k;
      const spots = spotsOf(now);
      const wish = (id: string): number => {
        const tied = pairs.flatMap(([from, to]) => (down ? to === id && from : from === id && to) || []);
        const at = tied.map((other) => spots.get(other)?.column ?? 0);
        const own = spots.get(id)?.column ?? 0;
        return at.length === 0 ? own : at.reduce((sum, x) => sum + x, 0) / at.length;
      };
      // A stable sort: lessons that wish for the same place stay in the order they were in.
      now = now.map((row, i) => (i === r ? [...row].sort((a, b) => wish(a) - wish(b)) : row));
    }
    const tangled = tangle(now, pairs);
    if (tangled < least) [best, least] = [now, tangled];
  }
  return best;
}

/** How many lines cross, straight as they would run, and a little for how far they run sideways. */
function tangle(rows: readonly (readonly string[])[], pairs: Pairs): number {
  const spots = spotsOf(rows);
  const lines = pairs.flatMap(([from, to]) => {
    const [a, b] = [spots.get(from), spots.get(to)];
    return a && b && b.row > a.row ? [{ a, b }] : [];
  });
  const at = ({ a, b }: (typeof lines)[number], row: number): number =>
    a.column + ((b.column - a.column) * (row - a.row)) / (b.row - a.row);
  let sum = lines.reduce((total, { a, b }) => total + 0.05 * Math.abs(a.column - b.column), 0);
  lines.forEach((one, i) =>
    lines.slice(i + 1).forEach((other) => {
      const top = Math.max(one.a.row, other.a.row);
      const bottom = Math.min(one.b.row, other.b.row);
      if (top < bottom && (at(one, top) - at(other, top)) * (at(one, bottom) - at(other, bottom)) < 0)
        sum += 1;
    }),
  );
  return sum;
}

/** A thousandth of a lesson is finer than any screen shows. */
const round = (value: number): number => Math.round(value * 1000) / 1000;

function linksOf(
  pairs: Pairs,
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
  return pairs.flatMap(([need, id]): CourseLink[] => {
    const [from, to] = [spots.get(need), spots.get(id)];
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
    return [{ from: need, to: id, d: `${d}V${to.row + 0.5}` }];
  });
}
