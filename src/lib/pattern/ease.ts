import { done, refuse, type Outcome } from './outcome.ts';
import { bridgedSeam, notchAlong, treatmentOf, withTreatment } from './style-seam.ts';
import type { Piece } from './types.ts';

/**
 * Mark the bridged excess of a dart as eased between two notches, one on each side of the bridge (given in either order,
 * kept in the direction of the line). Nothing moves: the stretch is taken up by easing while sewing.
 */
export function easeIn(piece: Piece, dart: string, fromNotch: string, toNotch: string): Outcome<Piece> {
  const treatment = treatmentOf(piece, dart);
  const found = bridgedSeam(piece, dart);
  if (treatment === undefined || found === undefined) return refuse('not-bridged', { dart });
  const { seam, arch } = found;
  if (treatment.kind !== 'bridged') return refuse('already-treated', { dart, as: treatment.kind });
  const at: number[] = [];
  for (const id of [fromNotch, toNotch]) {
    const notch = piece.notches.find((m) => m.id === id && m.ghost !== true);
    const along = notch && notchAlong(seam, notch);
    if (along === undefined) return refuse('no-such-notch', { notch: id });
    at.push(along);
  }
  const turned = at[0]! > at[1]!;
  const [from, to] = turned ? [toNotch, fromNotch] : [fromNotch, toNotch];
  if (Math.min(at[0]!, at[1]!) > arch.from || Math.max(at[0]!, at[1]!) < arch.from + arch.length) {
    return refuse('ease-misses-bridge', { from, to });
  }
  const { excess, bridge } = treatment;
  return done(
    withTreatment(piece, {
      dart,
      kind: 'eased',
      excess,
      bridge,
      eased: { from, to },
      trimmedEnd: undefined,
    }),
  );
}
