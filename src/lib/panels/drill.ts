import { beginningOf, drawOn } from '../lessons/drills/begin.ts';
import { lessonFrom } from '../lessons/drills/from-rules.ts';
import type { Drill } from '../lessons/drills/types.ts';
import type { Lesson } from '../lessons/types.ts';
import type { Block } from '../pattern/types.ts';
import type { Settings } from '../progress/settings.ts';
import { startWork } from '../recipe/start.ts';
import { wordsFrom } from '../strings/drill-words/kind-words.ts';
import { fetchKit } from './drills/kit.ts';

/** A drill made ready to be worked on: its lesson, and the block it begins on. */
export interface ReadyDrill {
  readonly drill: Drill;
  readonly lesson: Lesson;
  readonly block: Block;
}

/** Works a drill out, with its lengths in the learner's units. Rejects where what its kind is made of cannot be fetched. */
export async function readyDrill(drill: Drill, units: Settings['units']): Promise<ReadyDrill> {
  const kit = await fetchKit(drill.exercise);
  const begun = beginningOf(drill);
  const { block } = startWork({ figure: begun.figure, form: begun.form });
  const variant = kit.of(drawOn(begun, block.front));
  return { drill, lesson: lessonFrom(variant, kit.rules, wordsFrom(kit.words, units)), block };
}
