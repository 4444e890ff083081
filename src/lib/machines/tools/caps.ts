import '../../recipe/commands/caps.ts';
import { cap, trueLegs } from './finish-dart.ts';
import { register } from './known.ts';

/** The tools for finishing a dart. */
export const CAPS = register({ 'true-legs': trueLegs, cap });
