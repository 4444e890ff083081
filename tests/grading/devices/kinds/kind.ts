import { loadLesson } from '../../../../src/cli/load-lessons.ts';
import { chainLength, pointAtLength } from '../../../../src/lib/geometry/chain.ts';
import { nearestOnChain } from '../../../../src/lib/geometry/nearest.ts';
import type { Point } from '../../../../src/lib/geometry/types.ts';
import { blockOf } from '../../../../src/lib/lessons/block.ts';
import type { LessonStep } from '../../../../src/lib/lessons/types.ts';
import { workedStep } from '../../../../src/lib/lessons/worked/index.ts';
import { lineOf } from '../../../../src/lib/machines/scene.ts';
import { findEdge } from '../../../../src/lib/pattern/outline.ts';
import { apply } from '../../../../src/lib/recipe/apply.ts';
import { startWork } from '../../../../src/lib/recipe/start.ts';
import type { Command, Fabric, Work } from '../../../../src/lib/recipe/types.ts';
import { landmark } from '../../../recipe/sample.ts';
import type { Chance } from '../noise.ts';
import type { Person, Task } from '../person.ts';

/*
 * Every kind of gesture that the lessons ask for, each in a step that is marked by it. What a person means is the same for all devices: near
 * what is right, with an error of the mind, so large that somebody with a perfect hand is accepted about 85 times in a hundred.
 */

export interface Kind {
  readonly name: string;
  readonly task: Task;
  readonly rule: LessonStep;
  readonly work: (person: Person, mind: Chance) => void;
}

export const applied = (work: Work, command: Command): Work => {
  const next = apply(work, command);
  if ('refused' in next) throw new Error(`${command.do}: ${JSON.stringify(next.refused)}`);
  return next.work;
};

/** The table before a step of a lesson, worked rightly until there, and the commands that work it. */
function before(lesson: string, step: string, fabric: Fabric) {
  const found = loadLesson(lesson)!;
  let work = startWork(blockOf(found));
  for (const one of found.steps) {
    const commands = workedStep(one, work, fabric);
    if (one.id === step) return { work, rule: one, right: commands };
    for (const command of commands) work = applied(work, command);
  }
  throw new Error(`no step ${step} in ${lesson}`);
}

/** With this part of a person's things something is meant that is wrong altogether. */
export const WRONG = 0.08;

export function kind(
  name: string,
  [lesson, step]: readonly [string, string],
  { field, content, fabric = 'knit' }: { field?: number; content: number; fabric?: Fabric },
  make: (right: readonly Command[], work: Work) => Kind['work'],
): Kind {
  const { work, rule, right } = before(lesson, step, fabric);
  return { name, rule, task: { work, fabric, field, content }, work: make(right, work) };
}

export const feet = (work: Work, side: string) =>
  nearestOnChain(lineOf(work)!.chain, landmark(work, `${side}/bust-point`)).length;
export const along = (work: Work, mm: number): Point => pointAtLength(lineOf(work)!.chain, mm);

export const middle = (work: Work, edge: string): Point => onEdge(work, edge, 0.5);
export function onEdge(work: Work, id: string, part: number): Point {
  const { chain } = work.pieces.map((piece) => findEdge(piece, id)).find(Boolean)!;
  return pointAtLength(chain, chainLength(chain) * part);
}
