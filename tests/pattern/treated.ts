import { bridge } from '../../src/lib/pattern/bridge.ts';
import { takeOut } from '../../src/lib/pattern/take-out.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { handMade, PLAIN, type Numbers } from './hand-made.ts';
import { ok } from './ok.ts';

/** Both pieces bridged and the measured excess taken out: at the shoulder below, at the side above. */
export function treated(numbers: Numbers = PLAIN): { readonly upper: Piece; readonly lower: Piece } {
  const { upper, lower } = handMade(numbers);
  const low = ok(bridge(lower, 'right', 30, 28));
  const up = ok(bridge(upper, 'left', 32, 30));
  return {
    lower: ok(takeOut(low, 'right', 'start', 'measured', up)),
    upper: ok(takeOut(up, 'left', 'end', 'measured', low)),
  };
}
