import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { distance, samePoint } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { dartAngle } from '../../pattern/measure.ts';
import { landmark, legsOf } from '../../pattern/outline.ts';
import type { Dart, Piece } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';

/** Tips this near (mm) are one point. */
const ONE_POINT = 1e-6;

/** A dart of the block as it is drawn now, wherever its two legs have come to lie. mm and radians. */
export interface DrawnDart {
  readonly id: string;
  readonly bustPoint: string;
  /** Between the outer ends of its legs on the paper: it is the same for any tip. */
  readonly base: number;
  /** Lengths of the legs on the paper, and as they are drawn now. */
  readonly before: readonly [number, number];
  readonly now: readonly [number, number];
  /** Its angle at the bust point, on the paper. */
  readonly angle: number;
  /** `short`: still sewn short of the bust point; `there`: drawn to it; `off`: drawn to another point. */
  readonly tip: 'short' | 'there' | 'off';
}

/** The paper that everything was drawn on: the front as opened out, or the half front of the block. */
export const paperOf = ({ opened, block }: Work): Piece => opened ?? block.front;

/** The block's darts on a set of front pieces. Rigid motions change no leg, so that it does not matter what was turned meanwhile. */
export function drawnDarts(work: Work, fronts: readonly Piece[]): DrawnDart[] {
  const paper = paperOf(work);
  return paper.darts.flatMap((dart): DrawnDart[] => {
    const legs = legsOf(paper, dart);
    const bust = landmark(paper, dart.bustPoint);
    const angle = dartAngle(paper, dart.id);
    if (!legs || !bust || angle === undefined) return [];
    const ends = [chainStart(legs.into.chain), chainEnd(legs.outOf.chain)] as const;
    const tip = chainEnd(legs.into.chain);
    const before = [distance(ends[0], tip), distance(ends[1], tip)] as const;
    const now = [
      legNow(fronts, legs.into.id) ?? before[0],
      legNow(fronts, legs.outOf.id) ?? before[1],
    ] as const;
    const near = (far: readonly [number, number]): boolean =>
      Math.abs(now[0] - far[0]) <= ONE_POINT && Math.abs(now[1] - far[1]) <= ONE_POINT;
    const there = near([distance(ends[0], bust), distance(ends[1], bust)]);
    const short = near(before) && isSewn(fronts, dart);
    return [
      {
        id: dart.id,
        bustPoint: dart.bustPoint,
        base: distance(ends[0], ends[1]),
        before,
        now,
        angle,
        tip: there ? 'there' : short ? 'short' : 'off',
      },
    ];
  });
}

const isSewn = (fronts: readonly Piece[], { id }: Dart): boolean =>
  fronts.some((piece) => piece.darts.some((dart) => dart.id === id && dart.state === 'sewn'));

/**
 * How long a leg is drawn now, mm. Where a front was cut apart along it, it goes by the seam's name: it is the edge of its sheet that
 * begins or ends in the landmark of the leg's outer end.
 */
function legNow(fronts: readonly Piece[], leg: string): number | undefined {
  for (const piece of fronts)
    for (const part of piece.parts) {
      const end: Point | undefined = part.landmarks[`${leg}-end`];
      for (const { id, role, origin, chain } of part.edges) {
        const [a, d] = [chainStart(chain), chainEnd(chain)];
        if (id === leg) return distance(a, d);
        if (end === undefined || role !== 'style-line' || !origin.edge.startsWith('princess')) continue;
        if (samePoint(a, end) || samePoint(d, end)) return distance(a, d);
      }
    }
  return undefined;
}
