import '../../recipe/commands/fullness.ts';
import { fullness } from './full.ts';
import { register } from './known.ts';
import { notchSeam } from './notch-seam.ts';
import { partAtDarts, smoothSeam } from './princess.ts';

/** The tools for fullness at an edge and for seams through the bust point. */
export const FULLNESS = register({
  fullness,
  'part-at-darts': partAtDarts,
  'smooth-seam': smoothSeam,
  'notch-seam': notchSeam,
});
