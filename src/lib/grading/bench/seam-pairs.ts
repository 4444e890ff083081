import { edgeLength } from '../../pattern/edge-length.ts';
import { findEdge, legIds, outlineOf } from '../../pattern/outline.ts';
import { seamOf } from '../../pattern/seam.ts';
import type { Piece } from '../../pattern/types.ts';
import { walkSeam } from '../../pattern/walk.ts';

/** Two edges or runs that are sewn together. mm. */
export interface SeamPair {
  readonly kind: 'seam' | 'princess' | 'legs';
  /** The seam, the princess line with its interval, or the dart. */
  readonly id: string;
  readonly a: number;
  readonly b: number;
  /** a − b. */
  readonly difference: number;
  /** How much of the difference is eased, gathered or tucked on purpose. */
  readonly meant: number;
  /** What is left of the difference, in the interval between two marks where it is largest. */
  readonly worst: number;
}

const SEAMS = ['style-line', 'right/shoulder', 'left/shoulder', 'right/side', 'left/side'] as const;

/** All that is sewn together in a set of pieces (front and back): their seams, the banks of princess lines, the legs of open darts. */
export function seamPairsOf(pieces: readonly Piece[]): SeamPair[] {
  return [...SEAMS.flatMap((name) => walked(pieces, name)), ...princess(pieces), ...legs(pieces)];
}

function walked(pieces: readonly Piece[], name: string): SeamPair[] {
  const seam = seamOf(pieces, name);
  if (!seam) return [];
  const steps = walkSeam(seam.a, seam.b);
  const meant = steps.reduce((sum, { eased }) => sum + eased, 0);
  const rests = steps.map(({ difference, eased }) => difference - eased);
  const worst = rests.reduce((most, rest) => (Math.abs(rest) > Math.abs(most) ? rest : most), 0);
  const [a, b] = [seam.a.length, seam.b.length];
  return [{ kind: 'seam', id: name, a, b, difference: a - b, meant, worst }];
}

const alike = (kind: SeamPair['kind'], id: string, a: number, b: number): SeamPair => ({
  kind,
  id,
  a,
  b,
  difference: a - b,
  meant: 0,
  worst: a - b,
});

/** The centre piece's bank of each interval against the side piece's. */
function princess(pieces: readonly Piece[]): SeamPair[] {
  const banks = pieces
    .flatMap(outlineOf)
    .filter((edge) => edge.role === 'style-line' && edge.origin.edge.startsWith('princess'));
  return banks.flatMap((edge) => {
    const partner = edge.id.endsWith('/a') ? banks.find(({ id }) => id === edge.partner) : undefined;
    return partner ? [alike('princess', edge.id, edgeLength(edge), edgeLength(partner))] : [];
  });
}

/** The legs of each dart that is sewn as a dart: not those that were brought together, nor those drawn over by a gathered edge. */
function legs(pieces: readonly Piece[]): SeamPair[] {
  return pieces.flatMap((piece) =>
    piece.darts.flatMap((dart): SeamPair[] => {
      if (dart.state === 'closed' || piece.fullness?.some(({ darts }) => darts.includes(dart.id))) return [];
      const [into, outOf] = legIds(dart).map((id) => findEdge(piece, id));
      return into && outOf ? [alike('legs', dart.id, edgeLength(into), edgeLength(outOf))] : [];
    }),
  );
}
