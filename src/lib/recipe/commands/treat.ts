import { bridge } from './bridge.ts';
import { copy } from './copy.ts';
import { ease } from './ease.ts';
import { register } from './known.ts';
import { renotch } from './renotch.ts';
import { takeOut } from './take-out.ts';
import { trueWithBack } from './true.ts';

/** What is done with fullness that is left over in a seam. */
export const TREAT = register({
  copy,
  bridge,
  ease,
  'take-out': takeOut,
  true: trueWithBack,
  renotch,
});
