import { done, refuse, type Outcome } from './outcome.ts';
import type { SeamMarks } from './seam-run.ts';
import { bridgedSeam, notchAlong, placeOnSeam, type StyleSeam } from './style-seam.ts';
import type { EdgeNotch, Piece, Treatment } from './types.ts';
import { openPiece } from './with.ts';
import { withNotch } from './with-marks.ts';

interface Trim {
  readonly treatment: Treatment;
  readonly seam: StyleSeam;
}

/** The trimmed stretch on which a notch stands or stood, if any. */
function trimOf(piece: Piece, notch: EdgeNotch): Trim | undefined {
  for (const treatment of piece.treatments) {
    const found = treatment.kind === 'trimmed' ? bridgedSeam(piece, treatment.dart) : undefined;
    if (found === undefined) continue;
    const { seam, arch } = found;
    const at = notchAlong(seam, notch);
    if (at === undefined) continue;
    // A notch that was cut off lies beyond the end.
    const on = treatment.trimmedEnd === 'start' ? at <= arch.from : at >= arch.from + arch.length;
    if (on) return { treatment, seam };
  }
  return undefined;
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
  const notches = piece.notches.filter((m) => m.id !== notchId);
  notches.push(withNotch(first, { ghost: true }), {
    id: notchId,
    at: place.at,
    ghost: undefined,
    edge: place.edge,
    line: first.line,
  });
  const next = openPiece(piece);
  next.notches = notches;
  return done(next);
}
