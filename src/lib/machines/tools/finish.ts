import '../../recipe/commands/finish.ts';
import { allow, corner } from './allowances.ts';
import { carryNotches } from './carry-notches.ts';
import { grain } from './grain.ts';
import { register } from './known.ts';
import { label } from './label.ts';
import { walk } from './walk.ts';

/** The tools that make pieces ready to cut out of cloth. */
export const FINISH = register({ allow, corner, 'carry-notches': carryNotches, label, grain, walk });
