import '../../recipe/commands/legs.ts';
import { extendDart } from './extend-dart.ts';
import { register } from './known.ts';

/** The tool for the working dart. */
export const LEGS = register({ 'extend-dart': extendDart });
