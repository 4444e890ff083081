import '../../recipe/commands/sewn.ts';
import { backOff, cap, trueLegs } from './finish-dart.ts';
import { register } from './known.ts';

/** The tools for finishing a dart. */
export const SEWN = register({ 'back-off': backOff, 'true-legs': trueLegs, cap });
