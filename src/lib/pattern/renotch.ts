import { done, refuse, type Outcome } from './outcome.ts';
import type { SeamMarks } from './seam-run.ts';
import { bridgedSeam, notchAlong, placeOnSeam, type StyleSeam } from './style-seam.ts';
import type { EdgeNotch, Piece, Treatment } from './types.ts';
import { withNotch, withPiece } from './with.ts';

interface Trim {
  readonly treatment: Treatment;
  readonly seam: StyleSeam;
  /** The stretch between the bridge and the trimmed end, mm along the seam. */
  readonly from: number;
  readonly to: number;
}

function trims(piece: Piece): Trim[] {
  return piece.treatments.flatMap((treatment) => {
    const found = treatment.kind === 'trimmed' ? bridgedSeam(piece, treatment.dart) : undefined;
    if (!found) return [];
    const { seam, arch } = found;
    // A notch that was cut off lies beyond the end.
    return treatment.trimmedEnd === 'start'
      ? [{ treatment, seam, from: -Infinity, to: arch.from }]
      : [{ treatment, seam, from: arch.from + arch.length, to: Infinity }];
  });
}

function trimOf(piece: Piece, notch: EdgeNotch): Trim | undefined {
  return trims(piece).find((t) => {
    const at = notchAlong(t.seam, notch);
    return at !== undefined && at >= t.from && at <= t.to;
  });
}

/** Ids of the notches that a take-out left where they no longer meet their partners, and that were not marked again. */
export function notchesToMarkAgain(piece: Piece): string[] {
  return piece.notches
    .filter((m) => !m.ghost && !piece.notches.some((g) => g.ghost && g.id === m.id))
    .filter((m) => trimOf(piece, m) !== undefined)
    .map((m) => m.id);
}

/**
 * Mark a notch again on a seam that was trimmed: at the partner's distance from the trimmed end, or at `at` mm from that end.
 * The notch as first marked stays as a ghost; marking once more moves only the new one.
 */
export function renotch(
  piece: Piece,
  notchId: string,
  partnerRun: SeamMarks | undefined,
  at?: number,
): Outcome<Piece> {
  const first =
    piece.notches.find((m) => m.id === notchId && m.ghost) ?? piece.notches.find((m) => m.id === notchId);
  if (!first) return refuse('no-such-notch', { notch: notchId });
  const trim = trimOf(piece, first);
  if (!trim) return refuse('notch-not-on-trimmed-stretch', { notch: notchId });
  const { seam, treatment } = trim;
  let along = at;
  if (along === undefined) {
    const partner = partnerRun?.notches.find((m) => m.id === notchId);
    if (!partnerRun || !partner) return refuse('no-partner-notch', { notch: notchId });
    along = treatment.trimmedEnd === 'start' ? partner.at : partnerRun.length - partner.at;
  }
  const place = placeOnSeam(seam, treatment.trimmedEnd === 'start' ? along : seam.length - along);
  if (!place) return refuse('notch-off-seam', { notch: notchId, at: along });
  const others = piece.notches.filter((m) => m.id !== notchId);
  return done(
    withPiece(piece, {
      notches: [
        ...others,
        withNotch(first, { ghost: true }),
        { id: notchId, at: place.at, ghost: undefined, edge: place.edge, line: first.line },
      ],
    }),
  );
}
