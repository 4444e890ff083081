import type { CommandName, Fabric, Work } from '../../recipe/types.ts';
import type { Units } from '../../strings/units.ts';
import { allow, carryNotches, corner, grain, label, walk } from './allow.ts';
import { drawCurve, drawLine } from './draw.ts';
import { bridge, copy, ease, renotch, takeOut, trueWithBack } from './finish.ts';
import { backOff, cap, trueLegs } from './finish-dart.ts';
import type { Form, FormMakers } from './form.ts';
import { fullness, partAtDarts, smoothSeam } from './full.ts';
import { notchSeam } from './notch-seam.ts';
import { connect, extendDart, notch, overlay, removeNotch, separate, slash } from './line.ts';
import { identify, openOut, read } from './read-block.ts';
import { cutSlash, drawSlash } from './slashes.ts';
import { pivot, turn } from './turn.ts';

const MAKERS: FormMakers = {
  identify,
  read,
  'open-out': openOut,
  'draw-line': drawLine,
  'draw-curve': drawCurve,
  notch,
  'remove-notch': removeNotch,
  'extend-dart': extendDart,
  connect,
  slash,
  turn,
  'draw-slash': drawSlash,
  'cut-slash': cutSlash,
  pivot,
  'back-off': backOff,
  'true-legs': trueLegs,
  cap,
  fullness,
  'part-at-darts': partAtDarts,
  'smooth-seam': smoothSeam,
  'notch-seam': notchSeam,
  separate,
  overlay,
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
};

/** The typed way to give each of these commands, for what lies on the table now. `asked`: what is to be pointed out, where it is not what the course asks. */
export function formsFor(
  commands: readonly CommandName[],
  work: Work,
  fabric: Fabric,
  units: Units,
  asked?: readonly string[],
): readonly Form[] {
  return commands.flatMap((command) => MAKERS[command]?.(work, fabric, units, asked) ?? []);
}
