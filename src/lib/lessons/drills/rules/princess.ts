import type { CheckSpec } from '../../../grading/types.ts';
import type { Variant } from '../types.ts';
import { BUST, edgesOf, within, type Rules } from './rule.ts';

const PIECES = ['front-centre', 'front-side'] as const;
/** As in the course: the smoothed seam leaves its corner by no more than this, mm (ours). */
const MOST_MOVED = 12;

const seam = (v: Variant): CheckSpec => ({
  check: 'princess',
  names: { pieces: PIECES, bust: BUST },
  numbers: { most: MOST_MOVED },
  tolerances: { seam: within(v, 1.6, 'careful-seam'), moved: within(v, 0.8, 'pencil-line') },
});

/** Smoothing itself makes the sharper edge a little shorter, whoever does it: what is eased for that has one measure in every band. */
function smoothed(v: Variant): CheckSpec {
  const { tolerances, ...rest } = seam(v);
  const reach = v.smooth!;
  return {
    ...rest,
    names: { ...rest.names, smooth: PIECES },
    numbers: { ...rest.numbers, 'least-reach': reach, 'most-reach': reach },
    tolerances: {
      ...tolerances,
      seam: { value: 3.2, reason: 'passable-seam' },
      reach: within(v, 1.6, 'pencil-line'),
    },
  };
}

/** As in the course: so far from the bust point stand the notches beside it, mm, outside of any curve that a drill asks for. */
export const BESIDE = { least: 30, most: 70 } as const;
const WORKED_BESIDE = 45;

export const part = (v: Variant): Rules => ({
  checks: [seam(v)],
  worked: { by: 'part-at-darts', edges: edgesOf(v), with: 'right/waist-dart' },
});

export const smooth = (v: Variant): Rules => ({
  checks: [smoothed(v)],
  worked: {
    by: 'commands',
    commands: PIECES.map((piece) => ({ do: 'smooth-seam', piece, at: BUST, reach: v.smooth! })),
  },
});

export const notches = (v: Variant): Rules => ({
  checks: [
    {
      check: 'seam-notches',
      names: { piece: 'front-side', line: 'princess' },
      numbers: BESIDE,
      tolerances: { bust: within(v, 1.6, 'pencil-line'), place: within(v, 1.6, 'notch-place') },
    },
  ],
  worked: {
    by: 'commands',
    commands: [0, WORKED_BESIDE, -WORKED_BESIDE].map((off, i) => ({
      do: 'notch-seam',
      id: `n${i + 1}`,
      line: 'princess',
      off,
    })),
  },
});
