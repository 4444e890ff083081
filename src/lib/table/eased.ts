import { seamPoint } from '../machines/tools/seam.ts';
import { notchAlong, styleSeam } from '../pattern/style-seam.ts';
import type { Piece } from '../pattern/types.ts';
import type { Drawn } from './model.ts';

/** The stretch of a style seam that is eased, as a path beside it. */
export function eased(piece: Piece): readonly Drawn[] {
  const seam = styleSeam(piece);
  if (!seam) return [];
  return piece.treatments.flatMap((treatment): Drawn[] => {
    const ends = [treatment.eased?.from, treatment.eased?.to].map((id) => {
      const notch = piece.notches.find((one) => one.id === id && one.ghost !== true);
      return notch && notchAlong(seam, notch);
    });
    const [from, to] = [Math.min(...ends.map((e) => e ?? NaN)), Math.max(...ends.map((e) => e ?? NaN))];
    if (!(to > from)) return [];
    const count = Math.max(4, Math.round((to - from) / 8));
    let d = '';
    for (let i = 0; i <= count; i++) {
      const p = seamPoint(piece, seam, from + ((to - from) * i) / count);
      if (p) d += (d === '' ? 'M' : 'L') + `${p.x.toFixed(2)} ${p.y.toFixed(2)}`;
    }
    return [{ key: `eased ${treatment.dart}`, stroke: 'eased', d }];
  });
}
