import { HOW } from '../../lib/strings/how.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = () => ({ how: HOW });
