import { chainLength } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { distance } from '../../geometry/point.ts';
import { chainOf } from '../../recipe/anchors.ts';
import type { Anchor } from '../../recipe/types.ts';
import { landmarkAt, SIDES, type Worked } from './give.ts';
import { along, drawAcross } from './line-across.ts';

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

/** Step 3: from the right shoulder to the left side seam, close by both bust points. */
export const styleLine: Worked = (hand) => {
  const first = along(hand.work, 'right/shoulder', 'right/neck-point', 0.45);
  const last = along(hand.work, 'left/side-lower', 'left/dart-lower-end', 0.5);
  drawAcross(hand, first, last, PASS);
};

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
    if (bust)
      give({
        do: 'connect',
        dart: side,
        line: LINE,
        at: nearestOnChain(line, bust).length / whole,
        square: true,
      });
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
