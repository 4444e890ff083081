import { cutSlash } from './cut-slash.ts';
import { drawSlash } from './draw-slash.ts';
import { register } from './known.ts';

/** Moving a dart: slash lines to the bust point; the turning itself comes with the cuts. */
export const DART = register({ 'draw-slash': drawSlash, 'cut-slash': cutSlash });
