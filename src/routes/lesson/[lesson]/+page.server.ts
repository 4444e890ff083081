import { error } from '@sveltejs/kit';
import { HOW } from '../../../lib/strings/how.ts';
import { allLessons } from '../../lesson-files.ts';
import type { EntryGenerator, PageServerLoad } from './$types';

export const entries: EntryGenerator = () => allLessons().map(({ id }) => ({ lesson: id }));

export const load: PageServerLoad = ({ params }) => {
  const lesson = allLessons().find(({ id }) => id === params.lesson);
  if (!lesson) error(404, 'There is no such lesson.');
  return { lesson, how: HOW };
};
