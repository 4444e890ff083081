import { pointAtLength } from '../../geometry/chain.ts';
import { piecesOf } from '../../pattern/copy.ts';
import { cutSeamOf } from '../../pattern/cut-seam.ts';
import { seamOf, type Seam } from '../../pattern/seam.ts';
import { walkSeam, type WalkedInterval } from '../../pattern/walk.ts';
import type { Walk, Work } from '../../recipe/types.ts';
import { at, fact, missing, names, near, tolerance } from '../finding.ts';
import type { Check, CheckSpec, Finding, Where } from '../types.ts';

/** Ease smaller than this is none, mm. */
const NO_EASE = 0.05;

/** What is left of an interval's difference once the ease that was marked is taken off; a − b, mm. */
export const unexplained = (step: WalkedInterval): number => step.difference - step.eased;

/** Of intervals that are off alike the first one counts, so that rounding decides nothing; mm. */
const ALIKE = 1e-6;

/** Whether one difference is worse than another, whichever way. */
export const isWorse = (off: number, than: number): boolean => Math.abs(off) > Math.abs(than) + ALIKE;

export interface Worst {
  readonly off: number;
  readonly from: string;
  readonly to: string;
  /** Where the interval ends along side a, mm. */
  readonly at: number;
}

/** The interval that differs most. */
export function worstOf(steps: readonly WalkedInterval[]): Worst {
  let along = 0;
  let worst: Worst = { off: 0, from: 'start', to: 'end', at: 0 };
  for (const step of steps) {
    along += step.a;
    const off = unexplained(step);
    if (isWorse(off, worst.off)) worst = { off, from: step.from, to: step.to, at: along };
  }
  return worst;
}

const placeOf = (seam: Seam, mm: number): Where => at(pointAtLength(seam.a.chains.flat(), mm));

function judge(walk: Walk, seam: Seam, work: Work, spec: CheckSpec): Finding[] {
  const about = { seam: walk.seam };
  if (walk.along !== 'seam') {
    // What they measured on the cut lines, to show that two good seams seem to differ there.
    const cut = cutSeamOf(piecesOf(work.pieces, walk.as), walk.seam);
    const seen = cut && cut.a.length - cut.b.length;
    const cause = {
      code: 'cut-line-walked',
      ...(seen !== undefined && { amount: seen, unit: 'mm' as const }),
    };
    return [fact('walked/along', false, { about, cause })];
  }
  const steps = walkSeam(seam.a, seam.b);
  const worst = worstOf(steps);
  const allowed = tolerance(spec, 'walk');
  const eased = steps.some((step) => Math.abs(step.eased) > NO_EASE);
  const truth = Math.abs(worst.off) > allowed.value ? 'differs' : eased ? 'eased' : 'match';
  // The block's own ease over the back shoulder is no treatment: calling that a match is right as well.
  const byBlock = truth === 'eased' && walk.seam.endsWith('/shoulder') && walk.says === 'match';
  return [
    fact('walked/along', true, { about }),
    fact('walked/says', walk.says === truth || byBlock, {
      about: { seam: walk.seam, says: walk.says, truth },
    }),
    near('walked/difference', 'mm', worst.off, 0, allowed, {
      where: () => placeOf(seam, worst.at),
      about: { seam: walk.seam, from: worst.from, to: worst.to },
    }),
  ];
}

/**
 * Step 13: each seam of `names.seams` was walked on the seam line, on the pieces of the attempt's fabric, it agrees interval by
 * interval but for what is eased, and the learner said so. Tolerance `walk` in mm.
 */
export const walked: Check = ({ after, fabric }, spec) => {
  const set = piecesOf(after.pieces, fabric);
  const findings: Finding[] = [];
  for (const name of names(spec, 'seams')) {
    const walk = after.walked.find(
      (w) => w.seam === name && (w.as === fabric || piecesOf(after.pieces, w.as)[0] === set[0]),
    );
    const seam = walk && seamOf(after.pieces, name, fabric);
    if (walk && seam) findings.push(...judge(walk, seam, after, spec));
    else findings.push(missing('walked/done', { about: { seam: name } }));
  }
  return findings;
};
