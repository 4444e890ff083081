import { pointAtLength } from '../../geometry/chain.ts';
import type { Chain } from '../../geometry/types.ts';
import { Measured } from '../../pattern/measured.ts';
import { landmark } from '../../pattern/outline.ts';
import { bankOf } from '../../pattern/style-seam.ts';
import type { Piece } from '../../pattern/types.ts';
import { footOnLine } from '../feet.ts';
import { at, between, dimension, fact, missing, names, number, tolerance, type Extra } from '../finding.ts';
import { ownFront, sideOf, styleLine } from '../table.ts';
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
      for (const inner of part.lines) if (inner.id === line) for (const n of inner.notches) found.push(n.at);
      for (const edge of part.edges) {
        if (edge.role !== 'style-line' || edge.origin.edge !== line || bankOf(edge) !== 'b') continue;
        for (const n of piece.notches)
          if (n.edge === edge.id && !n.ghost) found.push(edge.origin.from + n.at);
      }
    }
  }
  return found;
}

/** One side of a foot: towards the line's start (−1) or end (1), and how far off the notch stands that is meant for it; mm. */
interface Side {
  readonly foot: number;
  readonly way: 1 | -1;
  readonly away: number | undefined;
}

/** The two sides of each foot. One with no notch near it has none. */
function sidesOf(feet: readonly number[], marks: readonly number[], spec: CheckSpec): Side[] {
  const most = number(spec, 'most');
  const middle = (number(spec, 'least') + most) / 2;
  return feet.flatMap((foot) =>
    ([-1, 1] as const).map((way) => ({
      foot,
      way,
      away: nearestTo(middle, marks, foot, way < 0, NEAR * most),
    })),
  );
}

/**
 * How far off the next notch stands that is meant for nothing else, for a side that has none; mm. Of several such sides it is told at the
 * one that it is nearest to.
 */
function strayOf(side: Side, sides: readonly Side[], marks: readonly number[]): number | undefined {
  const off = (mark: number, { foot, way }: Side): number => (mark - foot) * way;
  const meant = sides.flatMap((one) => (one.away === undefined ? [] : one.foot + one.way * one.away));
  let best: number | undefined;
  for (const mark of marks) {
    const away = off(mark, side);
    if (away <= 0 || meant.some((one) => Math.abs(one - mark) < ALIKE)) continue;
    const nearer = (one: Side): boolean =>
      one !== side && one.away === undefined && off(mark, one) > 0 && off(mark, one) < away;
    if (!sides.some(nearer) && (best === undefined || away < best)) best = away;
  }
  return best;
}

/**
 * One notch on a side of a foot, at a distance in the range; of several the one nearest to the middle of the range. A foot
 * with no notch near it is not done yet; one with a notch on one side only has a fault. Where there is none, it is told how far off the
 * next one stands. `late`: the line is cut, nothing can be added. `name`: whose bust point it is.
 */
function judge(
  chain: Chain,
  side: Side,
  sides: readonly Side[],
  marks: readonly number[],
  name: string,
  late: boolean,
  spec: CheckSpec,
): Finding {
  const { foot, way, away } = side;
  const code = way < 0 ? 'notches-placed/before-foot' : 'notches-placed/after-foot';
  const range = [number(spec, 'least'), number(spec, 'most')] as const;
  const about = { side: name };
  const place = (mm: number) => pointAtLength(chain, foot + way * mm);
  if (away !== undefined) {
    const where = () => dimension(place(0), place(away));
    return between(code, 'mm', away, range, tolerance(spec, 'place'), { where, about });
  }
  const untouched = sides.every((one) => one.foot !== foot || one.away === undefined);
  const stray = strayOf(side, sides, marks);
  if (stray !== undefined) {
    const extra: Extra = {
      where: () => dimension(place(0), place(stray)),
      about: { ...about, room: range[1] },
      cause: { code: 'notch-elsewhere', amount: stray },
    };
    return untouched && !late ? missing(code, extra) : fact(code, false, extra);
  }
  const where = () => at(place((range[0] + range[1]) / 2));
  if (untouched && !late) return missing(code, { where, about });
  return fact(code, false, { where, about, cause: { code: untouched ? 'too-late' : 'one-side-only' } });
}

/** How far from the foot the notch on one side of it stands: of several the one that suits best; none farther than `most` counts. */
function nearestTo(
  middle: number,
  marks: readonly number[],
  foot: number,
  before: boolean,
  most: number,
): number | undefined {
  let best: number | undefined;
  for (const mark of marks) {
    if (mark < foot !== before) continue;
    const away = Math.abs(mark - foot);
    if (away > most) continue;
    if (best === undefined || Math.abs(away - middle) < Math.abs(best - middle) - ALIKE) best = away;
  }
  return best;
}

const BY_EYE = { value: 0, reason: 'seen-by-eye' };
const NONE_TOO_MANY = { value: 0, reason: 'none-too-many' };

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
  const line = new Measured(drawn.chain);
  const { length } = line;
  const marks = notchesOn(ownFront(after), id);
  if (drawn.reversed) for (let i = 0; i < marks.length; i++) marks[i] = length - marks[i]!;
  marks.sort((a, b) => a - b);
  const feet = names(spec, 'bustPoints').flatMap((name) => {
    const bust = landmark(paper, name);
    return bust ? [{ name: sideOf(name), foot: line.lengthTo(footOnLine(drawn.chain, bust)) }] : [];
  });
  const sides = sidesOf(
    feet.map(({ foot }) => foot),
    marks,
    spec,
  );
  sides.forEach((side, i) => {
    const { name } = feet[Math.floor(i / 2)]!;
    findings.push(judge(drawn.chain, side, sides, marks, name, late, spec));
  });
  if (marks.length === 0) return findings;
  const apart = [number(spec, 'asymmetry'), 1e6] as const;
  const most = [1, number(spec, 'count')] as const;
  findings.push(
    between('notches-placed/symmetric', 'mm', asymmetry(marks, length), apart, BY_EYE),
    between('notches-placed/count', 'count', marks.length, most, NONE_TOO_MANY),
  );
  return findings;
};
