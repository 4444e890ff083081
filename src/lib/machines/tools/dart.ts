import '../../recipe/commands/dart.ts';
import { cutSlash } from './cut-slash.ts';
import { drawSlash } from './draw-slash.ts';
import { register } from './known.ts';
import { pivot } from './pivot.ts';

/** The tools for moving a dart. */
export const DART = register({
  'draw-slash': drawSlash,
  'cut-slash': cutSlash,
  pivot,
});
