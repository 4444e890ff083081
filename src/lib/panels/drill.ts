import { blockOf } from '../lessons/block.ts';
import { drillLesson } from '../lessons/drills/lesson.ts';
import type { Drill } from '../lessons/drills/types.ts';
import { variantOf } from '../lessons/drills/variant.ts';
import type { Lesson } from '../lessons/types.ts';
import type { Block } from '../pattern/types.ts';
import type { Settings } from '../progress/settings.ts';
import { startWork } from '../recipe/start.ts';
import { drillWords } from '../strings/drills.ts';

/** A drill made ready to be worked on: its lesson, and the block it begins on. */
export interface ReadyDrill {
  readonly drill: Drill;
  readonly lesson: Lesson;
  readonly block: Block;
}

/** Works a drill out, with its lengths in the learner's units. */
export function readyDrill(drill: Drill, units: Settings['units']): ReadyDrill {
  const lesson = drillLesson(variantOf(drill), drillWords(units));
  return { drill, lesson, block: startWork(blockOf(lesson)).block };
}
