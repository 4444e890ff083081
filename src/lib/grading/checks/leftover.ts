import { seamOf, type Seam, type SeamMarks } from '../../pattern/seam.ts';
import { bridgeId, treatmentOf } from '../../pattern/style-seam.ts';
import type { Piece, Treatment } from '../../pattern/types.ts';
import { walkSeam, type WalkedInterval } from '../../pattern/walk.ts';
import type { Fabric, Work } from '../../recipe/types.ts';
import { tightest } from '../curvature.ts';
import { at, between, fact, missing, names, near, number, tolerance } from '../finding.ts';
import { lineOf, piecesFor } from '../table.ts';
import type { Cause, Check, CheckSpec, Finding, StepContext } from '../types.ts';
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
  readonly about: Readonly<Record<string, string>>;
}

/** The piece of a set in whose seam edge the dart's connector opened. */
function holderOf(set: readonly Piece[], dart: string): Piece | undefined {
  for (const piece of set)
    for (const part of piece.parts)
      for (const e of part.edges) if (e.role === 'connector' && e.dart === dart) return piece;
  return undefined;
}

const SEWABLE = { value: 0, reason: 'sewable-curve' };

function smooth({ piece, dart, about }: Leftover, spec: CheckSpec): Finding | undefined {
  const id = bridgeId(dart);
  for (const arch of piece.seam ?? []) {
    if (arch.id !== id) continue;
    const { radius, at: place } = tightest(arch.chain);
    const range = [number(spec, 'radius'), 1e6] as const;
    const where = at(place);
    return between('leftover/smooth', 'mm', Math.min(radius, 1e6), range, SEWABLE, { where, about });
  }
  return undefined;
}

function openingOf(run: SeamMarks, dart: string): SeamMarks['openings'][number] | undefined {
  for (const opening of run.openings) if (opening.dart === dart) return opening;
  return undefined;
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
  const opening = openingOf(run, dart);
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

function eased({ fabric, treatment, about }: Leftover, spec: CheckSpec): Finding {
  const range = [0, number(spec, `${fabric}Limit`)] as const;
  return between('leftover/over-limit', 'mm', treatment.excess, range, tolerance(spec, 'limit'), { about });
}

/** Whether the step has a command that does something to a piece, or to the back of a seam. */
const hasRenotch = ({ commands }: StepContext, piece: string): boolean =>
  commands.some((c) => c.do === 'renotch' && c.piece === piece);
const hasTrue = ({ commands }: StepContext, edge: string, fabric: Fabric): boolean =>
  commands.some((c) => c.do === 'true' && c.edge === edge && (c.as ?? fabric) === fabric);

function trimmed(left: Leftover, context: StepContext, spec: CheckSpec, findings: Finding[]): void {
  const { fabric, dart, piece, treatment, about, end, style } = left;
  const least = number(spec, `${fabric}TrimAbove`);
  if (treatment.excess <= least) {
    const range = [least, 1e6] as const;
    findings.push(
      between('leftover/trim-not-needed', 'mm', treatment.excess, range, tolerance(spec, 'limit'), { about }),
    );
  }
  const line = lineOf(context.after, names(spec, 'line')[0]);
  const edge = line?.ends[treatment.trimmedEnd === 'start' ? 0 : 1];
  // The take-out stands at the end into which the dart went: its edge belongs to the seam named for this dart.
  const atItsEnd = edge === undefined || edge.startsWith(end);
  const endOf = { fabric, dart, piece: piece.id, edge: edge ?? '' };
  findings.push(fact('leftover/end', atItsEnd, { about: endOf }));
  if (!style || !atItsEnd) return;
  const { sum, worst } = atEnd(style, left);
  const cause = (): Cause => ({
    code: sum > 0 ? 'too-little-taken' : 'too-much-taken',
    amount: Math.abs(sum),
    unit: 'mm',
  });
  const { excess } = treatment;
  const taken = near('leftover/amount', 'mm', excess - sum, excess, tolerance(spec, 'seam'), {
    about,
    cause,
  });
  findings.push(taken);
  if (taken.state === 'right') {
    const notches = near('leftover/notches', 'mm', worst, 0, tolerance(spec, 'notch'), { about });
    const done = notches.state === 'right' || hasRenotch(context, piece.id);
    findings.push(done ? notches : missing('leftover/notches', { about }));
  }
  const back = backTrued(left, context, spec);
  if (back) findings.push(back);
}

/** The back's edge is as long as the front's that was redrawn, but for the ease that the block gave it. */
function backTrued(left: Leftover, context: StepContext, spec: CheckSpec): Finding | undefined {
  const { fabric, dart, piece, end } = left;
  const seam = seamOf(context.after.pieces, end, fabric);
  if (!seam) return undefined;
  const off = seam.a.length - (seam.b.length - (seam.b.eased?.amount ?? 0));
  const about = { fabric, dart, piece: piece.id, seam: end };
  const finding = near('leftover/back-trued', 'mm', off, 0, tolerance(spec, 'seam'), { about });
  const done = finding.state === 'right' || hasTrue(context, end, fabric);
  return done ? finding : missing('leftover/back-trued', { about });
}

/** The style seam of a set and how it walks. */
function styleOf(work: Work, fabric: Fabric): Style | undefined {
  const seam = seamOf(work.pieces, 'style-line', fabric);
  return seam && { seam, steps: walkSeam(seam.a, seam.b) };
}

function treat(
  set: readonly Piece[],
  fabric: Fabric,
  context: StepContext,
  spec: CheckSpec,
  findings: Finding[],
) {
  const darts = names(spec, 'darts');
  const ends = names(spec, 'seams');
  let style: Style | undefined;
  for (let i = 0; i < darts.length; i++) {
    const dart = darts[i]!;
    const piece = holderOf(set, dart);
    const treatment = piece && treatmentOf(piece, dart);
    if (!piece || !treatment) {
      const about = piece ? { fabric, dart, piece: piece.id } : { fabric, dart };
      findings.push(missing('leftover/bridged', { about }));
      continue;
    }
    const about = { fabric, dart, piece: piece.id };
    if (treatment.kind === 'bridged') {
      findings.push(missing('leftover/treated', { about }));
      continue;
    }
    if (treatment.kind === 'trimmed') style ??= styleOf(context.after, fabric);
    const left: Leftover = { fabric, dart, piece, treatment, style, end: ends[i]!, about };
    const curve = smooth(left, spec);
    if (curve) findings.push(curve);
    if (treatment.kind === 'eased') findings.push(eased(left, spec));
    else trimmed(left, context, spec, findings);
  }
}

/**
 * Step 10, for a knit and on a copy for a woven (`names.fabrics`): each opening of `names.darts` is bridged and then eased in, up
 * to the limit for the fabric, or taken out at the end its dart went to (`names.seams`: the seam of that end), by what was
 * measured, with the notches marked again and the back trued. `numbers`: `radius`, `knitLimit`, `wovenLimit`,
 * `knitTrimAbove`, `wovenTrimAbove` (mm); tolerances `limit`, `seam`, `notch` (mm).
 */
export const leftover: Check = (context, spec) => {
  const findings: Finding[] = [];
  let first: Piece | undefined;
  for (const fabric of names(spec, 'fabrics') as readonly Fabric[]) {
    const set = piecesFor(context.after, fabric);
    // Two fabrics that mean the same pieces: the copy is still to be made.
    if (first !== undefined && set[0] === first)
      findings.push(missing('leftover/copy', { about: { fabric } }));
    else treat(set, fabric, context, spec, findings);
    first ??= set[0];
  }
  return findings;
};
