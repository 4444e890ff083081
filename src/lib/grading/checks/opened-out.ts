import { applyTo, reflectionAcross } from '../../geometry/isometry.ts';
import { distance } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { landmark } from '../../pattern/outline.ts';
import type { Piece } from '../../pattern/types.ts';
import { dimension, missing, near, tolerance } from '../finding.ts';
import { pieceOf } from '../table.ts';
import type { Check } from '../types.ts';

/** Of gaps that are alike the first one is shown, so that rounding decides nothing; mm. */
const ALIKE = 1e-9;

// The block has a dozen landmarks, and their names come again in every mark.
const lefts = new Map<string, string>();

/** `right/bust-point` -> `left/bust-point`. */
function leftOf(id: string): string {
  let left = lefts.get(id);
  if (left === undefined) lefts.set(id, (left = id.replace('right/', 'left/')));
  return left;
}

interface Farthest {
  readonly gap: number;
  readonly id: string;
  readonly from: Point;
  readonly to: Point;
}

/** The pair of landmarks whose left one lies farthest from the mirror image, across the centre front, of its right one. */
function farthest(half: Piece, whole: Piece): Farthest | undefined {
  const top = landmark(half, 'neck-centre');
  const bottom = landmark(half, 'waist-centre');
  if (!top || !bottom) return undefined;
  const mirror = reflectionAcross(top, bottom);
  let worst: Farthest | undefined;
  for (const part of half.parts) {
    for (const id in part.landmarks) {
      if (!id.startsWith('right/')) continue;
      const from = landmark(whole, leftOf(id));
      if (!from) return undefined;
      const to = applyTo(mirror, part.landmarks[id]!);
      const gap = distance(from, to);
      if (!worst || gap > worst.gap + ALIKE) worst = { gap, id, from, to };
    }
  }
  return worst;
}

/** Step 2: the left half is the mirror image of the right one across the centre front. Tolerance `mirror` in mm. */
export const openedOut: Check = ({ before, after, commands }, spec) => {
  const half = pieceOf(before, 'front');
  const worst = half && after.opened && farthest(half, after.opened);
  if (!worst) return [missing('opened-out/mirror')];
  let about = '';
  for (const command of commands) if (command.do === 'open-out') about = command.about;
  const cause =
    about === '' || about.endsWith('centre-front') ? undefined : { code: 'mirrored-about-other-edge' };
  return [
    near('opened-out/mirror', 'mm', worst.gap, 0, tolerance(spec, 'mirror'), {
      where: dimension(worst.from, worst.to),
      cause,
      about: { edge: about, landmark: worst.id },
    }),
  ];
};
