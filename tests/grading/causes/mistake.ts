import type { Variant } from '../../../src/lib/lessons/drills/types.ts';
import type { Command, Work } from '../../../src/lib/recipe/types.ts';

/** What the simulated mistakes have in common. They know nothing of the grading code. */

export const BUST = { landmark: 'right/bust-point' } as const;
/** What a mistake moves, at the least, mm: clearly more than the trembling. */
export const CLEAR = 10;

export interface Made {
  readonly own: readonly Command[];
  /** By how much, mm, radians or a factor, as the commands say in the end, with the hand's trembling in them. */
  readonly amount?: (own: readonly Command[]) => number;
}

/** A mistake in one step: the commands of somebody who makes it; undefined where it cannot be made there. */
export type Mistake<V = Variant> = (at: {
  readonly chance: () => number;
  readonly variant: V;
  readonly step: string;
  readonly before: Work;
  readonly right: readonly Command[];
  readonly angles: readonly number[];
}) => Made | undefined;

export type Move = Extract<Command, { do: 'turn' | 'pivot' }>;
export const isMove = (c: Command): c is Move => c.do === 'turn' || c.do === 'pivot';
export const hasFrom = (c: Command): c is Extract<Command, { do: 'draw-slash' | 'pivot' }> =>
  c.do === 'draw-slash' || c.do === 'pivot';
export const between = (chance: () => number, a: number, b: number): number => a + (b - a) * chance();
export const pick = <T>(chance: () => number, from: readonly T[]): T =>
  from[Math.floor(chance() * from.length)]!;
