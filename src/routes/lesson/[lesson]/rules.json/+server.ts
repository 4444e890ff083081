import { error, json, type RequestHandler } from '@sveltejs/kit';
import { allLessons } from '../../../lesson-files.ts';
import type { EntryGenerator } from './$types';

// A file beside the lesson's page: whoever opens an attempt fetches the rules of its lesson, and of no other.
export const prerender = true;

export const entries: EntryGenerator = () => allLessons().map(({ id }) => ({ lesson: id }));

export const GET: RequestHandler = ({ params }) => {
  const lesson = allLessons().find(({ id }) => id === params['lesson']);
  if (!lesson) error(404, 'There is no such lesson.');
  return json(lesson);
};
