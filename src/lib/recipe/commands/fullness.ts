import { addFullness } from './add-fullness.ts';
import { register } from './known.ts';
import { notchSeam } from './notch-seam.ts';
import { partAtDarts } from './part-at-darts.ts';
import { smoothSeam } from './smooth-seam.ts';

/** What a dart can become besides a dart: fullness at an edge, or a seam through the bust point. */
export const FULLNESS = register({
  fullness: addFullness,
  'part-at-darts': partAtDarts,
  'smooth-seam': smoothSeam,
  'notch-seam': notchSeam,
});
