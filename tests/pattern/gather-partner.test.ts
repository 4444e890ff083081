import { describe, expect, it } from 'vitest';
import { chainLength } from '../../src/lib/geometry/chain.ts';
import { subchain } from '../../src/lib/geometry/subchain.ts';
import { findEdge } from '../../src/lib/pattern/outline.ts';
import { seamOf } from '../../src/lib/pattern/seam.ts';
import type { FullnessKind, Piece } from '../../src/lib/pattern/types.ts';
import { walkSeam } from '../../src/lib/pattern/walk.ts';
import { notchStrokes } from '../../src/lib/print/notches.ts';
import type { Command, Work } from '../../src/lib/recipe/types.ts';
import { tableOf } from '../machines/finish-tables.ts';

const WAIST = 'right/waist-dart';
const bust = { landmark: 'right/bust-point' } as const;

/** The waist dart moved to an edge and left there as fullness. */
const full = (edge: string, as: FullnessKind, before = 28, after = 34): Work =>
  tableOf([
    { do: 'extend-dart', dart: WAIST, to: bust },
    { do: 'draw-slash', slash: 'slash', from: { on: edge, at: 0.5 }, to: bust },
    { do: 'cut-slash', slash: 'slash', past: 0 },
    { do: 'turn', dart: WAIST, into: 'slash', part: 'freed', about: bust, by: { until: 'legs-meet' } },
    { do: 'fullness', dart: 'slash', as, before, after, ...(as === 'tucks' && { tucks: 3 }) } as Command,
  ]);
const backOf = ({ pieces }: Work): Piece => pieces.find(({ id }) => id === 'back')!;

// Common practice: what is gathered lies between two notches, and the edge that it is sewn to has them, too.
describe('the notches of fullness on the back', () => {
  it.each(['gathers', 'tucks', 'ease'] as const)(
    '%s at the shoulder: as far apart as the front is sewn there, and double',
    (as) => {
      const work = full('right/shoulder', as);
      const back = backOf(work);
      expect(back.notches.map(({ id }) => id).sort()).toEqual(['slash-gather-1', 'slash-gather-2']);
      const edge = findEdge(back, back.notches[0]!.edge)!;
      const [p, q] = back.notches.map(({ at }) => at).sort((a, b) => a - b) as [number, number];
      // Sewn: 28 + 34 mm, and the share of what the block drafts the back shoulder longer.
      const { a, b } = seamOf(work.pieces, 'right/shoulder', 'knit')!;
      const sewn = a.length - a.fulled!.reduce((sum, { amount }) => sum + amount, 0);
      expect(chainLength(subchain(edge.chain, p, q))).toBeCloseTo((62 * b.length) / sewn, 6);
      // Two notches, each of two strokes (single on the front, double on the back: trade notes).
      expect(notchStrokes(back, undefined)).toHaveLength(4);
    },
  );

  it('walked on the seam line, front and back agree interval by interval', () => {
    const { a, b } = seamOf(full('right/shoulder', 'gathers').pieces, 'right/shoulder', 'knit')!;
    const steps = walkSeam(a, b);
    expect(steps.map(({ from, to }) => `${from} ${to}`)).toHaveLength(3);
    for (const { difference, eased } of steps) expect(Math.abs(difference - eased)).toBeLessThan(1e-6);
  });

  it('stand on the side seam as well, at the front’s distances from the underarm', () => {
    const work = full('right/side', 'gathers', 20, 20);
    const { a, b } = seamOf(work.pieces, 'right/side', 'knit')!;
    const [first] = a.notches;
    expect(b.notches.map(({ id }) => id)).toEqual(a.notches.map(({ id }) => id));
    // Before the first of them nothing is gathered: 0.5 mm is what the two side seams may differ by (trade notes).
    expect(Math.abs(b.notches[0]!.at - first!.at)).toBeLessThan(0.5);
    expect(b.notches[1]!.at - b.notches[0]!.at).toBeCloseTo(40, 0);
  });

  it('are not made where nothing of the back is sewn to the edge', () => {
    for (const edge of ['right/neckline', 'right/armhole'])
      expect(backOf(full(edge, 'gathers')).notches).toEqual([]);
  });
});
