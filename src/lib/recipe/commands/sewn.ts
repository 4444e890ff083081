import { backOff } from './back-off.ts';
import { register } from './known.ts';

/** The sewn point of a dart. */
export const SEWN = register({ 'back-off': backOff });
