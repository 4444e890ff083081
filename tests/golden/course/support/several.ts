import { fail, pass, start, undone, type CourseCase, type Loose } from '../case.ts';
import { BUST, MEET, cut, draw, turn } from './moves.ts';

/* Attempts at one dart shared between several slashes from one edge: the rows slash, pivot and finish of the mistakes table of trade.md. */

export const cuts = (count: number): Loose[] =>
  Array.from({ length: count }, (_, i) => cut(0, `slash-${i + 1}`));
export const into = (n: number, by: object, about: object = BUST): Loose =>
  turn(by, about, 'freed', `slash-${n}`);
export const off = (n: number, by: number): Loose => ({ do: 'back-off', dart: `slash-${n}`, by });
/** Straight slashes from these places. */
export const fan = (edge: string, ats: readonly number[]): Loose[] =>
  ats.map((at, i) => draw(edge, at, BUST, `slash-${i + 1}`));

/** The dart shared evenly between the slashes in the order of `order`. */
const evenly = (order: readonly number[]): Loose[] =>
  order.map((n, i) => into(n, i === order.length - 1 ? MEET : { share: 1 / (order.length - i) }));

export function sharing(step: string, count: number): CourseCase[] {
  const forwards = Array.from({ length: count }, (_, i) => i + 1);
  const openings = forwards.map(() => 'dart-moved/opening');
  return [
    start(
      step,
      forwards.map(() => 'dart-moved/cut'),
    ),
    undone(step, 'cut-only', { codes: ['dart-moved/turned'], edit: () => cuts(count) }),
    pass(step, 'in-equal-parts'),
    pass(step, 'from-the-other-end', { edit: () => [...cuts(count), ...evenly([...forwards].reverse())] }),
    fail(step, openings, 'all-into-the-first', { edit: () => [...cuts(count), into(1, MEET)] }),
    fail(step, ['dart-moved/residual', 'dart-moved/opening'], 'the-last-part-forgotten', {
      causes: ['not-closed'],
      edit: () => [...cuts(count), ...evenly(forwards).slice(0, -1)],
    }),
    fail(step, ['dart-moved/hinge'], '', {
      causes: ['cut-through'],
      edit: () => [cut(2, 'slash-1'), ...cuts(count).slice(1), ...evenly(forwards)],
    }),
  ];
}
