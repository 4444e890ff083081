import type { LessonPicture } from '../print/lesson-picture.ts';
import type { CourseLink } from './course-layout.ts';

/** What a link to a lesson says. */
export interface LessonName {
  readonly id: string;
  readonly title: string;
  readonly number?: number;
}

/** Where a lesson stands in the course: the one after it, and all that it builds on, near and far. */
export interface LessonPlace {
  readonly next?: LessonName | undefined;
  readonly before: readonly LessonName[];
}
/** A drill has no place in the course: nothing follows it, and it builds on nothing. */
export const isDrill = ({ next, before }: LessonPlace): boolean => !next && before.length === 0;

/** A lesson on the course map. */
export interface CourseEntry extends LessonName {
  readonly summary: string;
  /** Step ids in order. */
  readonly steps: readonly string[];
  /** Ids of the lessons that it builds on itself. */
  readonly needs: readonly string[];
  /** Where it lies: rows and lessons from the top left. */
  readonly row: number;
  readonly column: number;
  readonly picture: LessonPicture;
}

/** The course map, laid out while the site is built. */
export interface CourseMapData {
  readonly entries: readonly CourseEntry[];
  readonly columns: number;
  readonly rows: number;
  readonly links: readonly CourseLink[];
}

/** What a lesson is called in a running text: `3. Waist dart to the side seam`. */
export const numbered = ({ number, title }: LessonName): string =>
  number === undefined ? title : `${number}. ${title}`;
