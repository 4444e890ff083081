import { workedLesson } from '../lib/lessons/worked/index.ts';
import type { Lesson } from '../lib/lessons/types.ts';
import { courseLayout } from '../lib/panels/course-layout.ts';
import { builtOn, directNeeds, inOrder } from '../lib/panels/course-needs.ts';
import type { CourseEntry, CourseMapData, LessonPlace } from '../lib/panels/course-map.ts';
import { lessonPicture, type LessonPicture } from '../lib/print/lesson-picture.ts';
import type { Work } from '../lib/recipe/types.ts';
import { allLessons } from './lesson-files.ts';

/** Worked once for the whole build: a lesson's result does not change while the site is built. */
const results = new Map<string, Work>();

const fabricOf = (lesson: Lesson) => lesson.fabrics[0] ?? 'knit';

/** The picture of what a lesson leads to, drawn from its worked solution on its own figure. */
export function pictureOf(lesson: Lesson, digits?: number): LessonPicture {
  const work = results.get(lesson.id) ?? workedLesson(lesson, fabricOf(lesson)).work;
  results.set(lesson.id, work);
  return lessonPicture(work, fabricOf(lesson), digits);
}

/** What a link to a lesson says. */
const named = ({ id, number, title }: Lesson) => ({ id, title, ...(number !== undefined && { number }) });

/** Everything the course map shows, for the lessons that there are. */
export function courseMap(): CourseMapData {
  const lessons = inOrder(allLessons());
  const { columns, rows, spots, links } = courseLayout(lessons);
  const entries = lessons.map((lesson): CourseEntry => ({
    ...named(lesson),
    summary: lesson.summary,
    steps: lesson.steps.map(({ id }) => id),
    needs: directNeeds(lessons, lesson),
    row: spots.get(lesson.id)?.row ?? 0,
    column: spots.get(lesson.id)?.column ?? 0,
    picture: pictureOf(lesson, 0),
  }));
  return { entries, columns, rows, links };
}

/** What a lesson's page says of the course: the lesson after it, and those that its test stands for. */
export function placeInCourse(lesson: Lesson): LessonPlace {
  const lessons = inOrder(allLessons());
  const before = builtOn(lessons, lesson.id);
  const next = lessons[lessons.findIndex(({ id }) => id === lesson.id) + 1];
  return {
    next: next && named(next),
    before: lessons.filter(({ id }) => before.has(id)).map(named),
  };
}
