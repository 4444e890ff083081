import { allow } from './allow.ts';
import { bridge } from './bridge.ts';
import { carryNotches } from './carry-notches.ts';
import { copy } from './copy.ts';
import { corner } from './corner.ts';
import { ease } from './ease.ts';
import { grain } from './grain.ts';
import { register } from './known.ts';
import { label } from './label.ts';
import { renotch } from './renotch.ts';
import { takeOut } from './take-out.ts';
import { trueWithBack } from './true.ts';
import { walk } from './walk.ts';

/** What makes pieces of the pattern ready to cut out of cloth. */
export const FINISH = register({
  copy,
  bridge,
  ease,
  'take-out': takeOut,
  true: trueWithBack,
  renotch,
  allow,
  corner,
  'carry-notches': carryNotches,
  label,
  grain,
  walk,
});
