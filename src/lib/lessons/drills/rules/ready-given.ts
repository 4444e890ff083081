import type { Variant } from '../types.ts';
import { BESIDE_FOOT, DIFFERS, KINK, LINE, TIGHTEST } from './line.ts';
import { BUST, type Rules } from './rule.ts';

/*
 * What is done when the pieces are to be made ready: the front of the main lesson up to its two pieces, by its checks and at its tolerances. No
 * band makes them narrower: nobody is asked for them.
 */
const START = 'right/shoulder';
const END = 'left/side-lower';
const LEFT_BUST = 'left/bust-point';

export const openOut = (): Rules => ({
  checks: [{ check: 'opened-out', tolerances: { mirror: { value: 0.76, reason: 'exact-mirror' } } }],
  worked: { by: 'commands', commands: [{ do: 'open-out', about: 'centre-front' }] },
});

export function styleLine(v: Variant): Rules {
  const [start] = v.goals;
  const { end, pass } = v.across!;
  return {
    checks: [
      {
        check: 'line-ends',
        names: { line: LINE, start: [START], end: [END] },
        tolerances: { end: { value: 0.1, reason: 'on-the-edge' } },
      },
      {
        check: 'line-shape',
        names: { line: LINE },
        numbers: { radius: TIGHTEST },
        tolerances: { kink: KINK },
      },
      {
        check: 'line-passes',
        names: { line: LINE, start: [START], toStart: BUST, toEnd: LEFT_BUST },
        numbers: { least: 10, most: 25 },
        tolerances: {
          distance: { value: 0.5, reason: 'pencil-line' },
          growth: { value: 0.1, reason: 'clear-of-overlap' },
        },
      },
    ],
    worked: {
      by: 'line-across',
      start: START,
      startFrom: start!.from,
      startAt: start!.fraction,
      end: END,
      endFrom: 'left/dart-lower-end',
      endAt: end.fraction,
      pass,
    },
  };
}

export const notches = (): Rules => ({
  checks: [
    {
      check: 'notches-placed',
      names: { line: LINE, start: [START], bustPoints: [BUST, LEFT_BUST] },
      numbers: { ...BESIDE_FOOT, asymmetry: DIFFERS, count: 6 },
      tolerances: { place: { value: 1.6, reason: 'notch-place' } },
    },
  ],
  worked: { by: 'notches' },
});

export const workingDarts = (v: Variant): Rules => ({
  checks: [
    {
      check: 'darts-extended',
      names: { darts: v.darts },
      tolerances: { tip: { value: 1.6, reason: 'careful-seam' } },
    },
  ],
  worked: { by: 'working-darts' },
});

export const connectors = (v: Variant): Rules => ({
  checks: [
    {
      check: 'connectors',
      names: { line: LINE, darts: v.darts },
      tolerances: { length: { value: 0.5, reason: 'pencil-line' } },
    },
  ],
  worked: { by: 'connectors' },
});

const closed = (dart: string, end: string, by: string) => (): Rules => ({
  checks: [
    {
      check: 'dart-closed',
      names: { dart, line: LINE, end: [end] },
      tolerances: {
        pivot: { value: 0.5, reason: 'pin-hole' },
        gap: { value: 3.2, reason: 'passable-seam' },
        opening: { value: 3.2, reason: 'passable-seam' },
      },
    },
  ],
  worked: { by },
});

export const firstDart = closed('right', START, 'move-along-line');
export const secondDart = closed('left', END, 'move-along-line-end');
