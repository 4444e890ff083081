import type { BlockForm } from '../../../pattern/block.ts';
import type { Param } from '../../types.ts';
import type { Variant } from '../types.ts';
import { BUST, within, type Rules } from './rule.ts';

/** As in the course, in every band: whoever points at the wrong leg of a narrow dart is not to be within it. mm. */
const POINTING = { value: 5, reason: 'pointing' } as const;

/** So far from its ends an edge is pointed at, mm: one corner is not to stand for two edges. With the tolerance of pointing, 7 mm are left. Ours. */
const CLEAR = 12;

/** Ends of the legs of a dart, as the block calls them. */
const ENDS: Readonly<Record<string, readonly string[]>> = {
  right: ['right/dart-upper-end', 'right/dart-lower-end'],
  'right/waist-dart': ['right/waist-dart-centre-end', 'right/waist-dart-side-end'],
};

const ON_EDGES: readonly string[] = [
  ...['centre-front', 'neckline', 'shoulder', 'armhole', 'side', 'waist'],
  ...['dart-upper', 'dart-lower', 'waist-dart-centre', 'waist-dart-side'],
];
/** On the middle of the body there is no right or left. */
const MIDDLE: readonly string[] = ['centre-front', 'neck-centre', 'waist-centre'];

/** Where a dart begins on an edge, the edge is two: the one of them that is pointed at. */
function edgeOf(what: string, form: BlockForm): string {
  if (what === 'side' && form !== 'waist') return 'side-lower';
  return what === 'waist' && form !== 'side' ? 'waist-outer' : what;
}

/** Where a thing lies on the block, in the middle of it if it is an edge. */
function placeOf(what: string, form: BlockForm): Param {
  const id = (name: string): string => (MIDDLE.includes(name) ? name : `right/${name}`);
  return ON_EDGES.includes(what) ? { on: id(edgeOf(what, form)), at: 0.5 } : { landmark: id(what) };
}

export const find = (v: Variant): Rules => ({
  checks: [
    {
      check: 'landmarks-found',
      names: { what: v.toFind! },
      numbers: { clear: CLEAR },
      tolerances: { point: POINTING },
    },
  ],
  worked: {
    by: 'commands',
    commands: v.toFind!.map((what) => ({ do: 'identify', what, at: placeOf(what, v.form) })),
  },
});

/** A protractor shows half a degree either way at most: 1 degree is the usual band, as in the course. */
export const read = (v: Variant): Rules => ({
  checks: [
    {
      check: 'readings',
      names: { what: ['dart-angle', 'leg-length', 'intake'], dart: v.darts[0]! },
      tolerances: { angle: within(v, 0.0174533, 'protractor'), length: within(v, 1.6, 'ruler') },
    },
  ],
  worked: { by: 'read-dart', bust: BUST, ends: ENDS[v.darts[0]!]! },
});

/** The table mirrors exactly: no band makes an edge beside the middle right. */
export const openOut = (): Rules => ({
  checks: [{ check: 'opened-out', tolerances: { mirror: { value: 0.76, reason: 'exact-mirror' } } }],
  worked: { by: 'commands', commands: [{ do: 'open-out', about: 'centre-front' }] },
});
