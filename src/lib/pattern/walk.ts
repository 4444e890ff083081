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
  const marks = [...a.notches, ...a.joints].sort(byPlace);
  const steps: WalkedInterval[] = [];
  let from = 'start';
  let a0 = 0;
  let b0 = 0;
  const walkTo = (to: string, a1: number, b1: number): void => {
    const onA = a1 - a0;
    const onB = b1 - b0;
    const eased = easedIn(a, a0, a1) + fulledIn(a, a0, a1) - easedIn(b, b0, b1) - fulledIn(b, b0, b1);
    steps.push({ from, to, a: onA, b: onB, difference: onA - onB, eased });
    from = to;
    a0 = a1;
    b0 = b1;
  };
  for (const { id, at } of marks) {
    const other = placeOf(b.joints, id) ?? placeOf(b.notches, id);
    if (other !== undefined) walkTo(id, at, other);
  }
  walkTo('end', a.length, b.length);
  return steps;
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
  const opening = run.openings.find((o) => o.from >= start && o.to <= end);
  if (opening) {
    const mid = (opening.from + opening.to) / 2;
    return mid >= from && mid < to ? amount : 0;
  }
  const shared = Math.min(to, end) - Math.max(from, start);
  return shared > 0 ? (amount * shared) / (end - start) : 0;
}

/** What is gathered, eased or tucked over openings in a stretch of a run; it lies evenly along each. */
function fulledIn({ fulled }: SeamMarks, from: number, to: number): number {
  let sum = 0;
  for (const f of fulled ?? []) {
    const shared = Math.min(to, f.to) - Math.max(from, f.from);
    if (shared > 0) sum += (f.amount * shared) / (f.to - f.from);
  }
  return sum;
}
