import { error } from '@sveltejs/kit';
import type { EntryGenerator, PageLoad } from './$types';

const known = ['slanted-seam'];

export const entries: EntryGenerator = () => known.map((lesson) => ({ lesson }));

export const load: PageLoad = ({ params }) => {
  if (!known.includes(params.lesson)) error(404, 'There is no such lesson.');
  return { lesson: params.lesson };
};
