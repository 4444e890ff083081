import { seamOf, type Seam } from '../../pattern/seam.ts';
import { bridgeId, treatmentOf } from '../../pattern/style-seam.ts';
import type { Piece, Treatment } from '../../pattern/types.ts';
import { walkSeam, type WalkedInterval } from '../../pattern/walk.ts';
import type { Fabric, Work } from '../../recipe/types.ts';
import { tightest } from '../curvature.ts';
import { at, between, fact, missing, names, near, number, tolerance, type Extra } from '../finding.ts';
import { piecesFor } from '../table.ts';
import type { Check, CheckSpec, Finding, StepContext } from '../types.ts';
import { isWorse, unexplained } from './walked.ts';

interface Style {
  readonly seam: Seam;
  readonly steps: readonly WalkedInterval[];
}

/** One dart's leftover in one set of pieces. */
interface Leftover {
  readonly fabric: Fabric;
  readonly dart: string;
  readonly piece: Piece;
  readonly treatment: Treatment;
  /** The style seam of the set, walked once for both darts. */
  readonly style: Style | undefined;
  /** The seam whose front edge a take-out at this dart's end redraws. */
  readonly end: string;
  readonly extra: Extra;
}

/** The piece of a set in whose seam edge the dart's connector opened. */
const holderOf = (set: readonly Piece[], dart: string): Piece | undefined =>
  set.find((piece) =>
    piece.parts.some((part) => part.edges.some((edge) => edge.role === 'connector' && edge.dart === dart)),
  );

function smooth({ piece, dart, extra }: Leftover, spec: CheckSpec): Finding[] {
  const arch = piece.seam?.find((edge) => edge.id === bridgeId(dart));
  if (!arch) return [];
  const { radius, at: place } = tightest(arch.chain);
  const range = [number(spec, 'radius'), 1e6] as const;
  const allowed = { value: 0, reason: 'sewable-curve' };
  return [
    between('leftover/smooth', 'mm', Math.min(radius, 1e6), range, allowed, { ...extra, where: at(place) }),
  ];
}

/**
 * What is left of the take-out at one end, mm, positive where the piece is still too long: the walked difference summed up from
 * that end to the interval that holds the bridge; and the worst interval on the way.
 */
function atEnd(
  { seam, steps }: Style,
  { piece, dart, treatment }: Leftover,
): { readonly sum: number; readonly worst: number } {
  const sign = seam.a.pieces.includes(piece.id) ? 1 : -1;
  const run = sign > 0 ? seam.a : seam.b;
  const opening = run.openings.find((o) => o.dart === dart);
  const middle = opening ? (opening.from + opening.to) / 2 : 0;
  let along = 0;
  let sum = 0;
  let worst = 0;
  for (const step of steps) {
    const start = along;
    along += sign > 0 ? step.a : step.b;
    const counts = treatment.trimmedEnd === 'start' ? start <= middle : along >= middle;
    if (!counts) continue;
    const off = sign * unexplained(step);
    sum += off;
    if (isWorse(off, worst)) worst = off;
  }
  return { sum, worst };
}

function eased({ fabric, treatment, extra }: Leftover, spec: CheckSpec): Finding[] {
  const limit = number(spec, `${fabric}Limit`);
  const range = [0, limit] as const;
  return [between('leftover/over-limit', 'mm', treatment.excess, range, tolerance(spec, 'limit'), extra)];
}

function trimmed(left: Leftover, context: StepContext, spec: CheckSpec): Finding[] {
  const { fabric, treatment, extra, end, style } = left;
  const findings: Finding[] = [];
  const least = number(spec, `${fabric}TrimAbove`);
  if (treatment.excess <= least) {
    const range = [least, 1e6] as const;
    findings.push(
      between('leftover/trim-not-needed', 'mm', treatment.excess, range, tolerance(spec, 'limit'), extra),
    );
  }
  const line = context.after.lines.find((candidate) => candidate.id === names(spec, 'line')[0]);
  const edge = line?.ends[treatment.trimmedEnd === 'start' ? 0 : 1];
  // The take-out stands at the end into which the dart went: its edge belongs to the seam named for this dart.
  const atItsEnd = edge === undefined || edge.startsWith(end);
  findings.push(fact('leftover/end', atItsEnd, { about: { ...extra.about, edge: edge ?? '' } }));
  if (!style || !atItsEnd) return findings;
  const { sum, worst } = atEnd(style, left);
  const cause = {
    code: sum > 0 ? 'too-little-taken' : 'too-much-taken',
    amount: Math.abs(sum),
    unit: 'mm' as const,
  };
  const amount = near(
    'leftover/amount',
    'mm',
    treatment.excess - sum,
    treatment.excess,
    tolerance(spec, 'seam'),
    { about: extra.about, cause },
  );
  findings.push(amount);
  if (amount.state === 'right') {
    const notches = near('leftover/notches', 'mm', worst, 0, tolerance(spec, 'notch'), extra);
    const again = context.commands.some((c) => c.do === 'renotch' && c.piece === left.piece.id);
    findings.push(notches.state === 'right' || again ? notches : missing('leftover/notches', extra));
  }
  return [...findings, ...backTrued(left, context, spec)];
}

/** The back's edge is as long as the front's that was redrawn, but for the ease that the block gave it. */
function backTrued({ fabric, extra, end }: Leftover, context: StepContext, spec: CheckSpec) {
  const seam = seamOf(context.after.pieces, end, fabric);
  if (!seam) return [];
  const off = seam.a.length - (seam.b.length - (seam.b.eased?.amount ?? 0));
  const about = { ...extra.about, seam: end };
  const finding = near('leftover/back-trued', 'mm', off, 0, tolerance(spec, 'seam'), { about });
  const done = context.commands.some((c) => c.do === 'true' && c.edge === end && (c.as ?? fabric) === fabric);
  return [finding.state === 'right' || done ? finding : missing('leftover/back-trued', { about })];
}

function treat(work: Work, fabric: Fabric, context: StepContext, spec: CheckSpec): Finding[] {
  const set = piecesFor(work, fabric);
  const ends = names(spec, 'seams');
  let style: Style | undefined;
  return names(spec, 'darts').flatMap((dart, i) => {
    const piece = holderOf(set, dart);
    const about = piece ? { fabric, dart, piece: piece.id } : { fabric, dart };
    const treatment = piece && treatmentOf(piece, dart);
    if (!piece || !treatment) return [missing('leftover/bridged', { about })];
    if (treatment.kind === 'bridged') return [missing('leftover/treated', { about })];
    if (treatment.kind === 'trimmed' && !style) {
      const seam = seamOf(work.pieces, 'style-line', fabric);
      style = seam && { seam, steps: walkSeam(seam.a, seam.b) };
    }
    const left = { fabric, dart, piece, treatment, style, end: ends[i]!, extra: { about } };
    const rest = treatment.kind === 'eased' ? eased(left, spec) : trimmed(left, context, spec);
    return [...smooth(left, spec), ...rest];
  });
}

/**
 * Step 10, for a knit and on a copy for a woven (`names.fabrics`): each opening of `names.darts` is bridged and then eased in, up
 * to the limit for the fabric, or taken out at the end its dart went to (`names.seams`: the seam of that end), by what was
 * measured, with the notches marked again and the back trued. `numbers`: `radius`, `knitLimit`, `wovenLimit`,
 * `knitTrimAbove`, `wovenTrimAbove` (mm); tolerances `limit`, `seam`, `notch` (mm).
 */
export const leftover: Check = (context, spec) => {
  const fabrics = names(spec, 'fabrics') as readonly Fabric[];
  const work = context.after;
  const own = (fabric: Fabric) => piecesFor(work, fabric)[0];
  return fabrics.flatMap((fabric, i) => {
    // Two fabrics that mean the same pieces: the copy is still to be made.
    const shared = i > 0 && own(fabric) === own(fabrics[0]!);
    return shared ? [missing('leftover/copy', { about: { fabric } })] : treat(work, fabric, context, spec);
  });
};
