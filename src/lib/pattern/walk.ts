import type { SeamMark, SeamMarks } from './seam-run.ts';

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
  const own = [...a.notches, ...a.joints].sort((m, k) => m.at - k.at);
  const other = new Map([...b.notches, ...b.joints].map((m) => [m.id, m.at]));
  const marks = own.filter((m) => other.has(m.id));
  const stops: SeamMark[] = [{ id: 'start', at: 0 }, ...marks, { id: 'end', at: a.length }];
  other.set('start', 0);
  other.set('end', b.length);
  return stops.slice(1).map((to, i) => {
    const from = stops[i]!;
    const onA = to.at - from.at;
    const b0 = other.get(from.id)!;
    const b1 = other.get(to.id)!;
    return {
      from: from.id,
      to: to.id,
      a: onA,
      b: b1 - b0,
      difference: onA - (b1 - b0),
      eased: easedIn(a, from.at, to.at) - easedIn(b, b0, b1),
    };
  });
}

/**
 * What is eased in a stretch of a run. Between two notches the ease is taken up where the opening was: marks between it
 * and the notches already agree. Ease of the whole run is shared out by length.
 */
function easedIn(run: SeamMarks, from: number, to: number): number {
  if (!run.eased) return 0;
  const { from: first, to: last, amount } = run.eased;
  const start = first === 'start' ? 0 : run.notches.find((m) => m.id === first)?.at;
  const end = last === 'end' ? run.length : run.notches.find((m) => m.id === last)?.at;
  if (start === undefined || end === undefined) return 0;
  const opening = run.openings.find((o) => o.from >= start && o.to <= end);
  if (opening) {
    const mid = (opening.from + opening.to) / 2;
    return mid >= from && mid < to ? amount : 0;
  }
  const shared = Math.min(to, end) - Math.max(from, start);
  return shared > 0 ? (amount * shared) / (end - start) : 0;
}
