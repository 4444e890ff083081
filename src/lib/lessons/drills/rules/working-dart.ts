import type { Variant } from '../types.ts';
import { BUST, within, type Rules } from './rule.ts';

export function workingDart(v: Variant): Rules {
  // A princess seam runs through both darts, though only one of them is moved.
  const darts = v.smooth === undefined ? v.darts : [...v.darts, 'right/waist-dart'];
  return {
    checks: [
      {
        check: 'darts-extended',
        names: { darts },
        tolerances: { tip: within(v, 1.6, 'pencil-line') },
      },
    ],
    worked: {
      by: 'commands',
      commands: darts.map((dart) => ({ do: 'extend-dart', dart, to: { landmark: BUST } })),
    },
  };
}
