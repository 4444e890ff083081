import { shortSort } from '../geometry/short-sort.ts';
import { byPlace, type SeamMark, type SeamMarks } from './seam-run.ts';

/** One interval of a walked seam, mm. `difference` is a − b, `eased` how much of it is eased on purpose (a's minus b's). */
export interface WalkedInterval {
  readonly from: string;
  readonly to: string;
  readonly a: number;
  readonly b: number;
  readonly difference: number;
  readonly eased: number;
}

/**
 * Walk one side of a seam along the other: interval by interval between the ends, the notches and the line's joints that both
 * sides have. Where marks stand in another order on b, that interval comes out negative there.
 */
export function walkSeam(a: SeamMarks, b: SeamMarks): WalkedInterval[] {
  const marks = a.notches.slice();
  for (const joint of a.joints) marks.push(joint);
  const steps: WalkedInterval[] = [];
  let from = 'start';
  let a0 = 0;
  let b0 = 0;
  for (const { id, at } of shortSort(marks, byPlace)) {
    const other = placeOf(b.joints, id) ?? placeOf(b.notches, id);
    if (other === undefined) continue;
    steps.push(interval(from, id, a, a0, at, b, b0, other));
    from = id;
    a0 = at;
    b0 = other;
  }
  steps.push(interval(from, 'end', a, a0, a.length, b, b0, b.length));
  return steps;
}

function interval(
  from: string,
  to: string,
  a: SeamMarks,
  a0: number,
  a1: number,
  b: SeamMarks,
  b0: number,
  b1: number,
): WalkedInterval {
  const onA = a1 - a0;
  const onB = b1 - b0;
  const eased = easedIn(a, a0, a1) + fulledIn(a, a0, a1) - easedIn(b, b0, b1) - fulledIn(b, b0, b1);
  return { from, to, a: onA, b: onB, difference: onA - onB, eased };
}

function placeOf(marks: readonly SeamMark[], id: string): number | undefined {
  for (const m of marks) if (m.id === id) return m.at;
  return undefined;
}

/**
 * What is eased in a stretch of a run. Between two notches the ease is taken up where the opening was: marks between it
 * and the notches already agree. Ease of the whole run is shared out by length.
 */
function easedIn(run: SeamMarks, from: number, to: number): number {
  if (!run.eased) return 0;
  const { from: first, to: last, amount } = run.eased;
  const start = first === 'start' ? 0 : placeOf(run.notches, first);
  const end = last === 'end' ? run.length : placeOf(run.notches, last);
  if (start === undefined || end === undefined) return 0;
  for (const opening of run.openings) {
    if (opening.from < start || opening.to > end) continue;
    const mid = (opening.from + opening.to) / 2;
    return mid >= from && mid < to ? amount : 0;
  }
  const shared = Math.min(to, end) - Math.max(from, start);
  return shared > 0 ? (amount * shared) / (end - start) : 0;
}

/** What is gathered, eased or tucked over openings in a stretch of a run; it lies evenly along each. */
function fulledIn({ fulled }: SeamMarks, from: number, to: number): number {
  let sum = 0;
  if (fulled === undefined) return sum;
  for (const f of fulled) {
    const shared = Math.min(to, f.to) - Math.max(from, f.from);
    if (shared > 0) sum += (f.amount * shared) / (f.to - f.from);
  }
  return sum;
}
