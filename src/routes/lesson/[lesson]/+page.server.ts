import { error } from '@sveltejs/kit';
import { blockOf } from '../../../lib/lessons/block.ts';
import { startWork } from '../../../lib/recipe/start.ts';
import { HOW } from '../../../lib/strings/how.ts';
import { pictureOf, placeInCourse } from '../../course-data.ts';
import { allLessons } from '../../lesson-files.ts';
import type { EntryGenerator, PageServerLoad } from './$types';

export const entries: EntryGenerator = () => allLessons().map(({ id }) => ({ lesson: id }));

export const load: PageServerLoad = ({ params }) => {
  const lesson = allLessons().find(({ id }) => id === params.lesson);
  if (!lesson) error(404, 'There is no such lesson.');
  return {
    lesson,
    how: HOW,
    block: startWork(blockOf(lesson)).block,
    picture: pictureOf(lesson),
    place: placeInCourse(lesson),
  };
};
