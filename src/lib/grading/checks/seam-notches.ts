import { offOf, partedSeam, placeOff, seamEnds, type PartedSeam } from '../../pattern/notch-seam.ts';
import { at, between, dimension, missing, near, names, number, tolerance } from '../finding.ts';
import { pieceOf } from '../table.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

const pointOff = (seam: PartedSeam, off: number) => placeOff(seam, off)?.point ?? seam.joint;

/** The notch on one interval that suits best: the one nearest to the middle of the range. */
function beyond(
  seam: PartedSeam,
  offs: readonly number[],
  way: 1 | -1,
  edge: string,
  spec: CheckSpec,
): Finding {
  const range = [number(spec, 'least'), number(spec, 'most')] as const;
  const middle = (range[0] + range[1]) / 2;
  // One that marks the bust point belongs to neither interval.
  const own = offs.map((off) => off * way).filter((off) => off > tolerance(spec, 'bust').value);
  const about = { edge };
  if (own.length === 0) return missing('seam-notches/beside', { about });
  const best = own.reduce((a, b) => (Math.abs(b - middle) < Math.abs(a - middle) ? b : a));
  return between('seam-notches/beside', 'mm', best, range, tolerance(spec, 'place'), {
    where: () => dimension(seam.joint, pointOff(seam, best * way)),
    about,
  });
}

/**
 * Notches on the parted seam `names.line` of the piece `names.piece`: one at the bust point (tolerance `bust`, mm), and on either side of it one
 * between `numbers.least` and `numbers.most` mm away (tolerance `place`). Its partner has the same ones, as they are marked on both edges.
 */
export const seamNotches: Check = ({ after }, spec) => {
  const line = names(spec, 'line')[0]!;
  const piece = pieceOf(after, names(spec, 'piece')[0]!);
  const seam = piece && partedSeam(piece, line);
  if (!piece || !seam) return [missing('seam-notches/parted')];
  const offs = piece.notches.flatMap((m) => offOf(seam, m) ?? []);
  const [first, second] = seamEnds(piece, line)!;
  const bust = tolerance(spec, 'bust');
  const nearest = offs.reduce<number | undefined>(
    (best, off) => (best === undefined || Math.abs(off) < Math.abs(best) ? off : best),
    undefined,
  );
  // Farther than where the others begin it is one of those, and the bust point has none.
  const marks = nearest !== undefined && Math.abs(nearest) < number(spec, 'least') / 2;
  return [
    marks
      ? near('seam-notches/bust', 'mm', nearest, 0, bust, { where: () => at(pointOff(seam, nearest)) })
      : missing('seam-notches/bust'),
    beyond(seam, offs, 1, first, spec),
    beyond(seam, offs, -1, second, spec),
  ];
};
