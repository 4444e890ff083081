import { chainLength, pointAtLength } from '../../../src/lib/geometry/chain.ts';
import type { Point } from '../../../src/lib/geometry/types.ts';
import { curveOf } from '../../../src/lib/machines/tools/draw-curve.ts';
import { apply } from '../../../src/lib/recipe/apply.ts';
import type { Command, DrawCurve, Work } from '../../../src/lib/recipe/types.ts';

/** The commands that work a step, one of which draws the line, and the table before it. */
interface Drawing {
  readonly own: readonly Command[];
  readonly work: Work;
}

/** The line of the step's own commands as a hand draws it in one stroke, moved by `bent` on its way; every 5 mm, with a slow sway. */
export const inOneStroke =
  (bent: (p: Point, part: number) => Point = (p) => p) =>
  ({ work, own }: Drawing): readonly DrawCurve[] => {
    const drawn = apply(
      work,
      own.find((c) => c.do === 'draw-line')!,
    );
    if (!('work' in drawn)) throw new Error('the sample line cannot be drawn');
    const { chain } = drawn.work.lines[0]!;
    const whole = chainLength(chain);
    const n = Math.round(whole / 5);
    const stroke = Array.from({ length: n + 1 }, (_, i) => {
      const p = pointAtLength(chain, (whole * i) / n);
      return bent({ x: p.x + 0.4 * Math.sin(i / 4), y: p.y + 0.4 * Math.cos(i / 6) }, i / n);
    });
    return [curveOf(work, stroke, 5)!];
  };
/** A dent like a gable: so deep in the middle of the stroke from `from` to `to`, mm. */
export const gable =
  (from: number, to: number, deep: number) =>
  (p: Point, part: number): Point => {
    const off = Math.max(0, 1 - Math.abs((2 * part - from - to) / (to - from)));
    return { x: p.x, y: p.y + deep * off };
  };
