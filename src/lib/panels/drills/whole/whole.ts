import { lessonFrom } from '../../../lessons/drills/from-rules.ts';
import type { DrillKit } from '../../../lessons/drills/kits/kit.ts';
import type { Variant } from '../../../lessons/drills/types.ts';
import type { Lesson } from '../../../lessons/types.ts';
import type { DrillHints } from '../../../strings/drill-words/hints.ts';
import type { KindWords } from '../../../strings/drill-words/kind-words.ts';
import { wholeWords } from '../../../strings/drill-words/whole-words.ts';
import type { RulerUnits } from '../../../strings/units.ts';

/** Makes the lesson of a drill with all that it is marked by, with those hints and with lengths in those units. */
export type Whole = (variant: Variant, hints: DrillHints, units: RulerUnits) => Lesson;

/** The whole lessons of one kind. */
export const wholeOf =
  (kit: DrillKit, words: KindWords): Whole =>
  (variant, hints, units) =>
    lessonFrom(variant, kit, wholeWords(words, hints, units));
