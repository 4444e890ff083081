import { pointAtLength } from '../../../geometry/chain.ts';
import { distance } from '../../../geometry/point.ts';
import { sin } from '../../../geometry/trig.ts';
import { findDart, findEdge, landmark } from '../../../pattern/outline.ts';
import type { Piece } from '../../../pattern/types.ts';
import { pick } from '../chance.ts';
import { goalsOn } from '../places.ts';
import type { Goal, Variant } from '../types.ts';
import { DARTS, lengthBetween, without, type Draw } from './kind.ts';

/** The most that is eased in, mm: the teacher's setting of the course, half an inch in a knit and an eighth in a woven cloth. */
const LIMITS = { knit: 12.7, woven: 3.2 } as const;
/** How far the new edge may have to reach, mm, and what must be left of the edge beyond it. */
const REACH = [16, 36] as const;
const LEFT_OVER = 6;

/** The angle goes to an edge and is gathered there, laid in tucks, or as much of it as the cloth takes is eased in. */
export function fullnessOf({ drill, chance, begun }: Draw): Variant {
  const { form, scale, paper } = begun;
  const dart = DARTS[form][0]!;
  const as = pick(chance, ['gathers', 'tucks', 'ease'] as const);
  const reach = lengthBetween(chance, scale, ...REACH);
  const count = as === 'ease' ? 2 : 1;
  const goals = goalsOn(paper, form, scale, count, chance, { room: reach + LEFT_OVER });
  const tucks = as === 'tucks' ? pick(chance, [2, 3, 4, 5]) : 0;
  const plain = { ...without(begun), darts: [dart], goals };
  if (as !== 'ease') return { ...plain, shares: [1], filled: { as, reach, tucks } };
  const limit = LIMITS[drill.fabric];
  const eased = pick(chance, easable(paper, dart, goals[0]!, limit)) / 100;
  return { ...plain, shares: [eased, 1 - eased], filled: { as, reach, tucks, limit } };
}

/** Whole percents of the dart's angle whose opening at the goal stays within the limit: the larger ones, worth the work. */
function easable(paper: Piece, dart: string, goal: Goal, limit: number): readonly number[] {
  const bust = landmark(paper, 'right/bust-point')!;
  const length = goal.mm / goal.fraction;
  const leg = distance(bust, pointAtLength(findEdge(paper, goal.edge)!.chain, goal.at * length));
  const angle = findDart(paper, dart)!.residual;
  const found: number[] = [];
  // Opening 2 L sin(θ/2) (trade notes, derived); the new edge takes up no more than that.
  for (let percent = 1; percent <= 50; percent++)
    if (2 * leg * sin((angle * percent) / 200) <= limit) found.push(percent);
  return found.slice(Math.floor(found.length / 2));
}
