import { courseMap } from './course-data.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = () => ({ course: courseMap() });
