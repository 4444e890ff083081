import { HOW } from '../../lib/strings/how.ts';
import { LADDERS } from '../../lib/strings/drill-words/hints.ts';
import { allLessons } from '../lesson-files.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = () => ({
  how: HOW,
  hints: LADDERS,
  titles: Object.fromEntries(allLessons().map(({ id, title }) => [id, title])),
});
