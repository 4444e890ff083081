import { TAU } from '../../geometry/trig.ts';
import { angleSum } from '../../pattern/angles.ts';
import { dartAngle, slip } from '../../pattern/measure.ts';
import type { Piece } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';
import { drawnDarts } from './drawn-darts.ts';

/** What is open round one bust point. Radians. */
export interface BustPoint {
  readonly id: string;
  /** Paper round it, over all sheets. */
  readonly paper: number;
  /**
   * What the paper must be: a full turn less the angles of the block's darts that are drawn to it. Undefined while one of them is drawn
   * to another point, so that nothing can be told of this one.
   */
  readonly expected: number | undefined;
  /** Darts that are drawn to it, slashes too, and how far each is open; negative where the sheets overlap. `slip`: its tips' distance, mm. */
  readonly darts: readonly { readonly id: string; readonly open: number; readonly slip: number }[];
  /** What is open beside them: along a connector, or between pieces that were cut apart there. */
  readonly beside: number;
  /** Darts of the block that still end short of it. */
  readonly short: readonly string[];
}

/** Each bust point of a set of front pieces. Only an angle that went from one place to another may have changed, never the sum. */
export function bustPointsOf(work: Work, fronts: readonly Piece[]): BustPoint[] {
  const drawn = drawnDarts(work, fronts);
  const ids = [...new Set(drawn.map(({ bustPoint }) => bustPoint))];
  return ids.map((id) => {
    const own = drawn.filter(({ bustPoint }) => bustPoint === id);
    const there = own.filter(({ tip }) => tip === 'there');
    const paper = angleSum(fronts, id);
    const open = fronts.flatMap((piece) =>
      piece.darts
        .filter((dart) => dart.bustPoint === id && dart.state !== 'sewn')
        .map((dart) => ({
          id: dart.id,
          open: dartAngle(piece, dart.id) ?? 0,
          slip: slip(piece, dart.id) ?? 0,
        })),
    );
    const off = own.some(({ tip }) => tip === 'off');
    return {
      id,
      paper,
      expected: off ? undefined : TAU - there.reduce((sum, { angle }) => sum + angle, 0),
      darts: open,
      beside: off ? 0 : TAU - paper - open.reduce((sum, one) => sum + one.open, 0),
      short: own.filter(({ tip }) => tip === 'short').map((dart) => dart.id),
    };
  });
}
