import { allLessons } from '../lesson-files.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = () => ({
  lessons: allLessons().map(({ id, title, steps }) => ({
    id,
    title,
    steps: steps.map((step) => ({ id: step.id, title: step.title })),
  })),
});
