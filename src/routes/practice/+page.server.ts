import { HOW } from '../../lib/strings/how.ts';
import { allLessons } from '../lesson-files.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = () => ({
  how: HOW,
  titles: Object.fromEntries(allLessons().map(({ id, title }) => [id, title])),
});
