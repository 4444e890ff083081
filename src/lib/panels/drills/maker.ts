import { drawOn, type Beginning } from '../../lessons/drills/begin.ts';
import { lessonFrom } from '../../lessons/drills/from-rules.ts';
import type { DrillKit } from '../../lessons/drills/kits/kit.ts';
import type { Lesson } from '../../lessons/types.ts';
import type { Block } from '../../pattern/types.ts';
import type { DrillHints } from '../../strings/drill-words/hints.ts';
import { wordsFrom, type KindWords } from '../../strings/drill-words/kind-words.ts';
import type { RulerUnits } from '../../strings/units.ts';

/** Makes the lesson of a drill on the block that it begins on, with those hints and with lengths in those units. */
export type Maker = (begun: Beginning, block: Block, hints: DrillHints, units: RulerUnits) => Lesson;

/** The maker of one kind of drill. */
export const makerOf =
  (kit: DrillKit, words: KindWords): Maker =>
  (begun, block, hints, units) =>
    lessonFrom(kit.of(drawOn(begun, block.front)), kit.rules, wordsFrom(words, hints, units));
