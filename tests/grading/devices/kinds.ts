import { allowing, easing, filling } from './kinds/cloth.ts';
import { backing, closing, connecting, extending, pivoting, splitting } from './kinds/darts.ts';
import { byPoints, inOneGo } from './kinds/line.ts';
import { graining, pointing, pressedNotches, seamNotching, slidNotches } from './kinds/marks.ts';
import { bending, slashing } from './kinds/slashes.ts';
import type { Kind } from './kinds/kind.ts';

/** Every kind of gesture that the lessons ask for. */
export const KINDS: readonly Kind[] = [
  pointing,
  byPoints,
  inOneGo,
  slidNotches,
  pressedNotches,
  extending,
  connecting,
  closing,
  splitting,
  slashing,
  bending,
  pivoting,
  backing,
  filling,
  seamNotching,
  graining,
  easing,
  allowing,
];
