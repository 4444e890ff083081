import '../../recipe/commands/dart.ts';
import { cutSlash } from './cut-slash.ts';
import { drawSlash } from './draw-slash.ts';
import { backOff, cap, trueLegs } from './finish-dart.ts';
import { register } from './known.ts';
import { pivot } from './pivot.ts';

/** The tools for moving a dart and finishing it. */
export const DART = register({
  'draw-slash': drawSlash,
  'cut-slash': cutSlash,
  pivot,
  'back-off': backOff,
  'true-legs': trueLegs,
  cap,
});
