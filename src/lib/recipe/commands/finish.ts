import { allow } from './allow.ts';
import { carryNotches } from './carry-notches.ts';
import { corner } from './corner.ts';
import { grain } from './grain.ts';
import { register } from './known.ts';
import { label } from './label.ts';
import { walk } from './walk.ts';

/** What makes pieces of the pattern ready to cut out of cloth. */
export const FINISH = register({ allow, corner, 'carry-notches': carryNotches, label, grain, walk });
