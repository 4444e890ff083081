import type { CheckSpec } from '../../../grading/types.ts';
import type { Fabric } from '../../../recipe/types.ts';
import type { Variant } from '../types.ts';
import { BUST, within, type Rules } from './rule.ts';

export const LINE = 'line';
/** As in the course: no corner of more than a degree, and nowhere tighter than this, mm. */
export const KINK = { value: 0.0174533, reason: 'smooth-line' } as const;
export const TIGHTEST = 25;

export function styleLine(v: Variant): Rules {
  const [start] = v.goals;
  const { end, least, most } = v.line!;
  const [from, to] = [start!, end];
  return {
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

/** As in the course: so far from the place nearest to the bust point stand the notches, mm. */
export const BESIDE_FOOT = { least: 30, most: 50 } as const;
/** And by so much the row of them is no mirror of itself, mm. */
export const DIFFERS = 6;
/** As in the course, and the teacher's setting of it: what a cloth takes up as ease, mm. */
export const EASES = { knit: 12.7, woven: 3.2 } as const;

export const notches = (v: Variant): Rules => ({
  checks: [
    {
      check: 'notches-placed',
      names: { line: LINE, start: [v.goals[0]!.edge], bustPoints: [BUST] },
      numbers: { ...BESIDE_FOOT, asymmetry: DIFFERS, count: 4 },
      tolerances: { place: within(v, 1.6, 'notch-place') },
    },
  ],
  worked: { by: 'notches' },
});

export const connector = (v: Variant): Rules => ({
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

/** What is asked of the leftover of all darts, on a set of pieces for each cloth. `seams`: where each dart's is taken out. */
export const leftoverTreated = (
  v: Variant,
  fabrics: readonly Fabric[],
  seams: readonly string[],
): readonly CheckSpec[] => [
  {
    check: 'leftover',
    names: { line: LINE, fabrics, darts: v.darts, seams },
    numbers: {
      radius: TIGHTEST,
      knitLimit: EASES.knit,
      wovenLimit: EASES.woven,
      knitTrimAbove: EASES.knit,
      wovenTrimAbove: 0,
    },
    tolerances: {
      limit: { value: 0.4, reason: 'teacher-limit' },
      seam: within(v, 1.6, 'careful-seam'),
      notch: within(v, 1.6, 'careful-seam'),
    },
  },
  {
    check: 'sliver',
    names: { fabrics },
    tolerances: {
      fit: { value: 0.1, reason: 'rigid-parts' },
      area: { value: 10, reason: 'sliver-triangle' },
    },
  },
];

/** The cloth of the drill decides; there is one set of pieces. */
export const leftover = (v: Variant): Rules => ({
  checks: leftoverTreated(v, [v.drill.fabric], [v.goals[0]!.edge]),
  worked: { by: 'leftover', sets: 'one' },
});
