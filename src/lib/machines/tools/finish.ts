import '../../recipe/commands/finish.ts';
import { allow, corner } from './allowances.ts';
import { bridge } from './bridge.ts';
import { grain } from './grain.ts';
import { register } from './known.ts';
import { ease, renotch, takeOut, trueBack } from './leftover.ts';
import { carryNotches, copy, label } from './set.ts';
import { walk } from './walk.ts';

/** The tools that make pieces ready to cut out of cloth. */
export const FINISH = register({
  copy,
  bridge,
  ease,
  'take-out': takeOut,
  true: trueBack,
  renotch,
  allow,
  corner,
  'carry-notches': carryNotches,
  label,
  grain,
  walk,
});
