import { chainEnd, chainStart } from '../geometry/chain.ts';
import { distance } from '../geometry/point.ts';
import type { Point } from '../geometry/types.ts';
import { seamMarks } from './seam.ts';
import { styleSeam, treatmentOf } from './style-seam.ts';
import type { Piece } from './types.ts';
import { walkSeam } from './walk.ts';
import { withoutSeam } from './with-allowances.ts';

/** The opening that a moved dart left in the seam edge of the piece that holds its bust point. All mm. */
export interface Opening {
  readonly dart: string;
  /** The connector's foot on the cut edge towards the line's start, and the other one: the same point of the line as drawn. */
  readonly foot: Point;
  readonly farFoot: Point;
  /** Distance between the two, measured on the cut edges. */
  readonly width: number;
  /** How much longer than its partner the seam is here: spanned straight, or by the bridge once there is one. */
  readonly excess: number;
  /** Where it begins, along the seam as cut. */
  readonly at: number;
}

/**
 * The openings in a piece's style seam, as they were cut, in the direction of the line; they stay readable once bridged. The
 * excess is measured against `partner` when it is given, between the nearest marks that both seams carry.
 */
export function openings(piece: Piece, partner?: Piece): Opening[] {
  const seam = styleSeam(withoutSeam(piece));
  if (!seam) return [];
  const out: Opening[] = [];
  seam.stretches.forEach((s, i) => {
    if (s.edge !== undefined || s.dart === undefined) return;
    const before = seam.stretches[i - 1]!.edge!.chain;
    const after = seam.stretches[i + 1]!.edge!.chain;
    const [foot, farFoot] =
      seam.bank === 'a' ? [chainStart(before), chainEnd(after)] : [chainEnd(before), chainStart(after)];
    const against = partner && seamExcess(piece, partner, s.dart);
    out.push({
      dart: s.dart,
      foot,
      farFoot,
      width: distance(foot, farFoot),
      excess: against ?? treatmentOf(piece, s.dart)?.excess ?? s.length,
      at: s.from,
    });
  });
  return out;
}

/**
 * How much longer a piece's seam is than its partner's at a dart's opening or bridge: the difference of the walked interval
 * that holds it. Undefined when the partner's own opening stands in the same interval (no mark tells the two apart), or
 * once the excess was taken out.
 */
export function seamExcess(piece: Piece, partner: Piece, dart: string): number | undefined {
  const ours = styleSeam(piece);
  const theirs = ours && styleSeam(partner, ours.line);
  if (!ours || !theirs || treatmentOf(piece, dart)?.kind === 'trimmed') return undefined;
  const a = seamMarks(piece, ours);
  const b = seamMarks(partner, theirs);
  const own = a.openings.find((o) => o.dart === dart);
  if (!own) return undefined;
  const mid = (own.from + own.to) / 2;
  let onA = 0;
  let onB = 0;
  for (const step of walkSeam(a, b)) {
    if (mid >= onA && mid < onA + step.a) {
      const held = b.openings.some((o) => o.to > onB && o.from < onB + step.b);
      return held ? undefined : step.difference;
    }
    onA += step.a;
    onB += step.b;
  }
  return undefined;
}
