import '../../recipe/commands/sewn.ts';
import { backOff } from './back-off.ts';
import { register } from './known.ts';

/** The tool for the sewn point of a dart. */
export const SEWN = register({ 'back-off': backOff });
