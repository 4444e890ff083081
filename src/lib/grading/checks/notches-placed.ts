import { chainLength, pointAtLength } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import type { Chain } from '../../geometry/types.ts';
import { landmark } from '../../pattern/outline.ts';
import { bankOf } from '../../pattern/style-seam.ts';
import type { Piece } from '../../pattern/types.ts';
import { at, between, dimension, fact, missing, names, number, tolerance } from '../finding.ts';
import { ownFront, styleLine } from '../table.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

/** A notch farther from a foot than this many times the range does not belong to it. */
const NEAR = 1.5;

/** Of notches that suit alike the first one counts, so that rounding decides nothing; mm. */
const ALIKE = 1e-6;

/** Refusals of a notch that comes too late. */
const LATE = ['already-cut', 'line-already-cut', 'already-separated'];

/** The notches across a line, mm from its start: on the line while it is whole, on its bank b where it is cut already. */
function notchesOn(pieces: readonly Piece[], line: string): number[] {
  const found: number[] = [];
  for (const piece of pieces) {
    for (const part of piece.parts) {
      for (const inner of part.lines) if (inner.id === line) found.push(...inner.notches.map((n) => n.at));
      for (const edge of part.edges) {
        if (edge.role !== 'style-line' || edge.origin.edge !== line || bankOf(edge) !== 'b') continue;
        for (const n of piece.notches)
          if (n.edge === edge.id && !n.ghost) found.push(edge.origin.from + n.at);
      }
    }
  }
  return found;
}

/**
 * One notch on each side of a foot, at a distance in the range; of several the one nearest to the middle of the range. A foot
 * with no notch near it is not done yet; one with a notch on one side only has a fault. `late`: the line is cut, nothing can be added.
 */
function besideFoot(
  chain: Chain,
  marks: readonly number[],
  foot: number,
  side: string,
  late: boolean,
  spec: CheckSpec,
): Finding[] {
  const range = [number(spec, 'least'), number(spec, 'most')] as const;
  const middle = (range[0] + range[1]) / 2;
  const best: [number | undefined, number | undefined] = [undefined, undefined];
  for (const mark of marks) {
    const away = Math.abs(mark - foot);
    const i = mark < foot ? 0 : 1;
    const had = best[i];
    if (away > NEAR * range[1]) continue;
    if (had === undefined || Math.abs(away - middle) < Math.abs(had - middle) - ALIKE) best[i] = away;
  }
  const untouched = best[0] === undefined && best[1] === undefined;
  const place = (mm: number) => pointAtLength(chain, foot + mm);
  return [-1, 1].map((way, i) => {
    const code = `notches-placed/${i === 0 ? 'before-foot' : 'after-foot'}`;
    const away = best[i];
    const about = { side };
    if (away !== undefined) {
      const where = () => dimension(place(0), place(way * away));
      return between(code, 'mm', away, range, tolerance(spec, 'place'), { where, about });
    }
    const where = () => at(place(way * middle));
    if (untouched && !late) return missing(code, { where, about });
    return fact(code, false, { where, about, cause: { code: untouched ? 'too-late' : 'one-side-only' } });
  });
}

/** How far, at most, the notches miss each other when the seam is laid upside down, mm. */
function asymmetry(marks: readonly number[], length: number): number {
  let most = 0;
  for (let i = 0; i < marks.length; i++) {
    most = Math.max(most, Math.abs(marks[i]! - (length - marks[marks.length - 1 - i]!)));
  }
  return most;
}

/**
 * Step 4: notches across the style line before it is cut. On each side of each place where a connector will meet the line, at
 * least one, `least` to `most` mm away; not symmetric along the seam; no more than `count` in all.
 */
export const notchesPlaced: Check = ({ after, unfollowed }, spec) => {
  const id = names(spec, 'line')[0]!;
  const drawn = styleLine(after, id, names(spec, 'start'));
  const paper = after.opened;
  if (!drawn || !paper) return [missing('notches-placed/line')];
  const findings: Finding[] = [];
  const late = unfollowed.some(
    ({ command, refused }) => command.do === 'notch' && LATE.includes(refused.code),
  );
  if (late) findings.push(fact('notches-placed/after-cutting', false));
  const length = chainLength(drawn.chain);
  const marks = notchesOn(ownFront(after), id)
    .map((mark) => (drawn.reversed ? length - mark : mark))
    .sort((a, b) => a - b);
  for (const name of names(spec, 'bustPoints')) {
    const bust = landmark(paper, name);
    if (bust) {
      const foot = nearestOnChain(drawn.chain, bust).length;
      findings.push(...besideFoot(drawn.chain, marks, foot, name.split('/')[0]!, late, spec));
    }
  }
  if (marks.length === 0) return findings;
  const apart = [number(spec, 'asymmetry'), 1e6] as const;
  const most = [1, number(spec, 'count')] as const;
  return [
    ...findings,
    between('notches-placed/symmetric', 'mm', asymmetry(marks, length), apart, {
      value: 0,
      reason: 'seen-by-eye',
    }),
    between('notches-placed/count', 'count', marks.length, most, { value: 0, reason: 'none-too-many' }),
  ];
};
