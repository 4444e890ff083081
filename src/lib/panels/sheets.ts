import type { Lesson, LessonToWork } from '../lessons/types.ts';
import type { LessonContext } from '../machines/lesson-context.ts';
import type { Block } from '../pattern/block.ts';
import { practiceSheet } from '../print/practice-sheet.ts';
import { resultSheet } from '../print/result-sheet.ts';
import { saveFile } from '../progress/files.ts';
import type { Units } from '../strings/units.ts';

/** Offers the pieces as they lie after the last step, at half scale, as a file. */
export function saveResultSheet(lesson: LessonToWork, context: LessonContext, units: Units): void {
  const work = context.steps.get(lesson.steps.at(-1)!.id)!.after;
  const options = { fabric: context.base.fabric, units, lessonTitle: lesson.title, scale: lesson.scale };
  saveFile(`${lesson.id}-half-scale.svg`, resultSheet(work, options), 'image/svg+xml');
}

/** Offers the bare block with the text of a lesson or drill, to be worked on paper. */
export function savePracticeSheet(lesson: Lesson, block: Block): void {
  saveFile(`${lesson.id}-practice.html`, practiceSheet(lesson, block.front), 'text/html');
}
