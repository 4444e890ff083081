import { chainLength, chainStart } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { distance } from '../../geometry/point.ts';
import { splineThrough } from '../../geometry/spline.ts';
import type { Point } from '../../geometry/types.ts';
import { anchorInside, chainOf, resolveAnchor } from '../../recipe/anchors.ts';
import type { Anchor, Work } from '../../recipe/types.ts';
import { landmarkAt, SIDES, type Worked } from './give.ts';

const LINE = 'line';
/** How far the worked line passes from each bust point, mm. */
const PASS = 17;

/** Step 1: everything is pointed out and read off the block. */
export const readTheBlock: Worked = ({ work, give }) => {
  give({ do: 'identify', what: 'bust-point', at: { landmark: 'right/bust-point' } });
  for (const leg of ['dart-upper', 'dart-lower'])
    give({ do: 'identify', what: leg, at: { on: `right/${leg}`, at: 0.5 } });
  give({ do: 'identify', what: 'centre-front', at: { on: 'centre-front', at: 0.5 } });
  give({ do: 'identify', what: 'neck-point', at: { landmark: 'right/neck-point' } });
  const [bust, upper, lower] = ['bust-point', 'dart-upper-end', 'dart-lower-end'].map((id) =>
    landmarkAt(work, `right/${id}`),
  );
  if (!bust || !upper || !lower) return;
  give({ do: 'read', what: 'dart-angle', value: work.block.facts.dartAngle });
  give({ do: 'read', what: 'leg-length', value: distance(bust, upper) });
  give({ do: 'read', what: 'intake', value: distance(upper, lower) });
};

export const openOut: Worked = ({ give }) => give({ do: 'open-out', about: 'centre-front' });

/** Step 3: five points; the two by the bust points are pushed out until the curve itself passes at the wanted distance. */
export const styleLine: Worked = ({ work, give }) => {
  const b1 = landmarkAt(work, 'right/bust-point');
  const b2 = landmarkAt(work, 'left/bust-point');
  const first = along(work, 'right/shoulder', 'right/neck-point', 0.45);
  const last = along(work, 'left/side-lower', 'left/dart-lower-end', 0.5);
  const start = resolveAnchor(work, first);
  const end = resolveAnchor(work, last);
  if (!b1 || !b2 || !start || !end) return;
  let k1 = PASS;
  let k2 = PASS;
  // Out of B1 towards the centre front and a little up, out of B2 towards the waist and a little to the centre.
  const points = (): Point[] => [
    start,
    { x: b1.x + 0.94 * k1, y: b1.y - 0.34 * k1 },
    { x: (b1.x + b2.x) / 2 - 8, y: (b1.y + b2.y) / 2 + 8 },
    { x: b2.x - 0.2 * k2, y: b2.y + 0.98 * k2 },
    end,
  ];
  for (let round = 0; round < 12; round++) {
    const line = splineThrough(points());
    k1 += PASS - nearestOnChain(line, b1).distance;
    k2 += PASS - nearestOnChain(line, b2).distance;
  }
  const inner = points().slice(1, -1);
  give({
    do: 'draw-line',
    line: LINE,
    points: [first, ...inner.map((p) => anchorInside(work, 'front', p)), last],
  });
};

/** The anchor on an edge at a fraction counted from the end at which a landmark stands. */
function along(work: Work, edge: string, from: string, fraction: number): Anchor {
  const chain = chainOf(work, edge);
  const p = landmarkAt(work, from);
  const forward = chain !== undefined && p !== undefined && distance(chainStart(chain), p) < 1e-6;
  return { on: edge, at: forward ? fraction : 1 - fraction };
}

/** Step 4: one notch on each side of both places where a connector will meet the line, no two distances alike. */
export const notches: Worked = ({ work, give }) => {
  const line = chainOf(work, LINE);
  if (!line) return;
  const whole = chainLength(line);
  const marks = { right: [-42, 34], left: [-38, 46] };
  let n = 1;
  for (const side of SIDES) {
    const bust = landmarkAt(work, `${side}/bust-point`);
    if (!bust) continue;
    const foot = nearestOnChain(line, bust).length;
    for (const away of marks[side])
      give({ do: 'notch', id: `n${n++}`, line: LINE, at: (foot + away) / whole });
  }
};

export const workingDarts: Worked = ({ give }) => {
  for (const side of SIDES) give({ do: 'extend-dart', dart: side, to: { landmark: `${side}/bust-point` } });
};

/** Step 6: from each bust point to the nearest place of the line. */
export const connectors: Worked = ({ work, give }) => {
  const line = chainOf(work, LINE);
  if (!line) return;
  const whole = chainLength(line);
  for (const side of SIDES) {
    const bust = landmarkAt(work, `${side}/bust-point`);
    if (bust) give({ do: 'connect', dart: side, line: LINE, at: nearestOnChain(line, bust).length / whole });
  }
};

/** Steps 7 and 8: slash up to the bust point, turn the freed part until the legs meet. */
export const moveDart =
  (dart: (typeof SIDES)[number], from: 'start' | 'end'): Worked =>
  ({ work, give }) => {
    const apart = work.pieces.some((piece) => piece.id === 'upper');
    const slash = { do: 'slash', dart, line: LINE, past: 0 } as const;
    give(apart ? slash : { ...slash, from });
    const about: Anchor = { landmark: `${dart}/bust-point` };
    give({ do: 'turn', dart, part: 'freed', about, by: { until: 'legs-meet' } });
  };

export const separate: Worked = ({ give }) => {
  give({ do: 'separate', line: LINE });
  for (const piece of ['upper', 'lower']) give({ do: 'overlay', piece });
};
