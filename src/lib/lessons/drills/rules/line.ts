import type { Variant } from '../types.ts';
import { BUST, CUTTING, within, type Rules } from './rule.ts';

const LINE = 'line';
/** As in the course: no corner of more than a degree, and nowhere tighter than this, mm. */
const KINK = { value: 0.0174533, reason: 'smooth-line' } as const;
const TIGHTEST = 25;

export function styleLine(v: Variant): Rules {
  const [start] = v.goals;
  const { end, least, most } = v.line!;
  const [from, to] = [start!, end];
  return {
    tools: ['draw-line'],
    cautions: [],
    checks: [
      {
        check: 'line-ends',
        names: { line: LINE, start: [from.edge], end: [to.edge], from: [from.from, to.from] },
        numbers: { 'start-at': from.fraction, 'end-at': to.fraction },
        tolerances: { end: { value: 0.1, reason: 'on-the-edge' }, place: within(v, 3.2, 'passable-seam') },
      },
      {
        check: 'line-shape',
        names: { line: LINE },
        numbers: { radius: TIGHTEST },
        tolerances: { kink: KINK },
      },
      {
        check: 'line-passes',
        names: { line: LINE, start: [from.edge], toStart: BUST },
        numbers: { least, most },
        tolerances: {
          distance: within(v, 0.5, 'pencil-line'),
          growth: { value: 0.1, reason: 'clear-of-overlap' },
        },
      },
    ],
    worked: {
      by: 'near-line',
      start: from.edge,
      startAt: from.at,
      end: to.edge,
      endAt: to.at,
      pass: (least + most) / 2,
    },
  };
}

export const connector = (v: Variant): Rules => ({
  tools: ['connect'],
  cautions: [],
  checks: [
    {
      check: 'connectors',
      names: { line: LINE, darts: v.darts },
      tolerances: { length: within(v, 0.5, 'pencil-line') },
    },
  ],
  worked: { by: 'connectors' },
});

export const moveAlong = (v: Variant): Rules => ({
  tools: ['slash', 'turn'],
  cautions: CUTTING,
  checks: [
    {
      check: 'dart-closed',
      names: { dart: v.darts[0]!, line: LINE, end: [v.goals[0]!.edge] },
      tolerances: {
        pivot: within(v, 0.5, 'pin-hole'),
        gap: within(v, 3.2, 'passable-seam'),
        opening: within(v, 3.2, 'passable-seam'),
      },
    },
  ],
  worked: { by: 'move-along-line' },
});

export const separate = (): Rules => ({
  tools: ['separate', 'overlay'],
  cautions: CUTTING,
  checks: [
    {
      check: 'separated',
      names: { pieces: ['upper', 'lower'] },
      tolerances: { area: { value: 1, reason: 'rigid-parts' } },
    },
    {
      check: 'overlaid',
      names: { pieces: ['upper', 'lower'] },
      tolerances: { fit: { value: 0.1, reason: 'rigid-parts' } },
    },
  ],
  worked: { by: 'separate' },
});
