import { cutSlash } from './cut-slash.ts';
import { drawSlash } from './draw-slash.ts';
import { register } from './known.ts';
import { pivot } from './pivot.ts';

/** Moving a dart: slash lines to the bust point, or the pin; turning what was slashed comes with the cuts. */
export const DART = register({
  'draw-slash': drawSlash,
  'cut-slash': cutSlash,
  pivot,
});
