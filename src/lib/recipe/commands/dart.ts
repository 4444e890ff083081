import { backOff } from './back-off.ts';
import { cap } from './cap.ts';
import { cutSlash } from './cut-slash.ts';
import { drawSlash } from './draw-slash.ts';
import { register } from './known.ts';
import { pivot } from './pivot.ts';
import { trueLegs } from './true-legs.ts';

/** Moving a dart: slash lines to the bust point, or the pin, and finishing it; turning what was slashed comes with the cuts. */
export const DART = register({
  'draw-slash': drawSlash,
  'cut-slash': cutSlash,
  pivot,
  'back-off': backOff,
  'true-legs': trueLegs,
  cap,
});
