import { chainEnd, chainStart } from '../geometry/chain.ts';
import { distance, sub } from '../geometry/point.ts';
import { angleBetween, PI } from '../geometry/trig.ts';
import { measuredConnector } from '../pattern/connector-measure.ts';
import { intake } from '../pattern/measure.ts';
import { findDart, landmark, legsOf, seamGroups } from '../pattern/outline.ts';
import type { Piece } from '../pattern/types.ts';
import { sewnPointOf } from './checks/darts-extended.ts';
import { HALF } from './paper-scale.ts';
import { valueOn, type PaperItem } from './paper-value.ts';
import type { Cause } from './types.ts';

/** A mistake in measuring, and what one would have read then: mm on the half-scale paper, or radians. */
type Mistake = readonly [code: string, read: number | undefined];

/** Leg length and angle from the point of the sewn dart, mm at full size and radians; undefined where the paper shows no such point. */
function atSewnPoint(piece: Piece, id: string): { leg: number; angle: number } | undefined {
  const dart = findDart(piece, id);
  const legs = dart && legsOf(piece, dart);
  const sewn = piece.finished?.find((one) => one.dart === id)?.sewnPoint ?? landmark(piece, sewnPointOf(id));
  if (!legs || !sewn) return undefined;
  const from = chainStart(legs.into.chain);
  const to = chainEnd(legs.outOf.chain);
  return { leg: distance(sewn, from), angle: Math.abs(angleBetween(sub(from, sewn), sub(to, sewn))) };
}

/** From the point of the sewn dart to the foot of its connector, mm at full size. */
function fromSewnPoint(piece: Piece, id: string): number | undefined {
  const sewn = landmark(piece, sewnPointOf(id));
  const drawn = measuredConnector(piece, id);
  return sewn && drawn && distance(sewn, drawn.foot);
}

/** Widths of the open darts that a seam is broken by, mm at full size; undefined where there is none. */
function dartsAcross(piece: Piece, seam: string): number | undefined {
  const groups = seamGroups(piece);
  let sum = 0;
  groups.forEach(({ id }, i) => {
    const before = groups[(i + groups.length - 1) % groups.length]!.id;
    const after = groups[(i + 1) % groups.length]!.id;
    if (before === seam && after === seam && id.startsWith('dart/'))
      sum += intake(piece, id.slice('dart/'.length)) ?? 0;
  });
  return sum === 0 ? undefined : sum;
}

const half = (full: number | undefined): number | undefined => (full === undefined ? undefined : full * HALF);

function mistakes(piece: Piece, item: PaperItem, full: number): readonly Mistake[] {
  const { what, about } = item;
  const same = (other: PaperItem['what']): number | undefined => valueOn(piece, { what: other, about });
  if (what === 'dart-angle')
    return [
      ['measured-at-sewn-point', atSewnPoint(piece, about)?.angle],
      ['protractor-other-row', PI - full],
      ['half-the-angle', full / 2],
    ];
  if (what === 'connector-angle') return [['protractor-other-row', PI - full]];
  const lengths: Mistake[] = [
    ['scale-mixed', full],
    ['scale-mixed', full * HALF * HALF],
    ['centimetres-entered', (full * HALF) / 10],
  ];
  if (what === 'leg-length')
    lengths.push(
      ['measured-at-sewn-point', half(atSewnPoint(piece, about)?.leg)],
      ['intake-for-leg', half(same('intake'))],
    );
  if (what === 'connector-length')
    lengths.push(['measured-at-sewn-point', half(fromSewnPoint(piece, about))]);
  if (what === 'intake') lengths.push(['leg-for-intake', half(same('leg-length'))]);
  const across = what === 'seam-length' ? dartsAcross(piece, about) : undefined;
  if (across !== undefined) lengths.push(['dart-measured-along', (full + across) * HALF]);
  return lengths;
}

/**
 * What may have gone wrong in measuring, from the value that was read (mm on the half-scale paper, or radians), the piece of the table and
 * what it has (mm at full size, or radians). Only where exactly one mistake explains the value within `reach`: two that do are no cause.
 */
export function paperCause(
  piece: Piece,
  item: PaperItem,
  full: number,
  read: number,
  reach: number,
): Cause | undefined {
  const fitting = mistakes(piece, item, full).filter(
    ([, would]) => would !== undefined && Math.abs(read - would) <= reach,
  );
  return fitting.length === 1 ? { code: fitting[0]![0] } : undefined;
}
