import type { TurnFact, Work } from '../../recipe/types.ts';

/** A dart that was closed beside those that a step means, and by how much, radians. */
export interface ClosedBeside {
  readonly dart: string;
  readonly by: number;
}

/** A dart that is less closed than this, radians, was turned and turned back: what a hand trembles at the end of a leg of 200 mm is half of it (ours). */
const CLOSED = 0.02;

const closedBy = (turns: readonly TurnFact[]): number => turns[0]!.before - turns.at(-1)!.residual;

/**
 * The first dart that was closed between two tables, wholly or in part, though it is none of those `meant`; of one slash, where it is given, only by
 * the turns that may have gone into it. Undefined where there is none.
 */
export function closedBeside(
  before: Work,
  after: Work,
  meant: readonly string[],
  slash?: string,
): ClosedBeside | undefined {
  const turns = after.turns
    .slice(before.turns.length)
    .filter(({ into }) => slash === undefined || into === undefined || into === slash);
  for (const { dart } of turns) {
    if (meant.includes(dart)) continue;
    const by = closedBy(turns.filter((turn) => turn.dart === dart));
    if (by > CLOSED) return { dart, by };
  }
  return undefined;
}
