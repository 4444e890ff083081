import { extendDart } from './extend-dart.ts';
import { register } from './known.ts';

/** The working dart: most lessons begin with it, and begin without what draws style lines. */
export const LEGS = register({ 'extend-dart': extendDart });
