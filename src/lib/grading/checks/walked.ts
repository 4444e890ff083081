import { pointAtLength } from '../../geometry/chain.ts';
import { piecesOf } from '../../pattern/copy.ts';
import { cutSeamOf } from '../../pattern/cut-seam.ts';
import { seamOf, type Seam } from '../../pattern/seam.ts';
import type { Piece } from '../../pattern/types.ts';
import { walkSeam, type WalkedInterval } from '../../pattern/walk.ts';
import type { Fabric, Walk, Work } from '../../recipe/types.ts';
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

/** What the learner had to conclude. */
function truthOf(steps: readonly WalkedInterval[], worst: Worst, allowed: number): Walk['says'] {
  if (Math.abs(worst.off) > allowed) return 'differs';
  for (const step of steps) if (Math.abs(step.eased) > NO_EASE) return 'eased';
  return 'match';
}

function judge(walk: Walk, seam: Seam, work: Work, spec: CheckSpec, findings: Finding[]): void {
  const about = { seam: walk.seam };
  if (walk.along !== 'seam') {
    // What they measured on the cut lines, to show that two good seams seem to differ there.
    const cut = cutSeamOf(work.pieces, walk.seam, walk.as);
    const seen = cut && cut.a.length - cut.b.length;
    const cause = {
      code: 'cut-line-walked',
      ...(seen !== undefined && { amount: seen, unit: 'mm' as const }),
    };
    findings.push(fact('walked/along', false, { about, cause }));
    return;
  }
  const steps = walkSeam(seam.a, seam.b);
  const worst = worstOf(steps);
  const allowed = tolerance(spec, 'walk');
  const truth = truthOf(steps, worst, allowed.value);
  // The block's own ease over the back shoulder is no treatment: calling that a match is right as well.
  const byBlock = truth === 'eased' && walk.seam.endsWith('/shoulder') && walk.says === 'match';
  findings.push(
    fact('walked/along', true, { about }),
    fact('walked/says', walk.says === truth || byBlock, {
      about: { seam: walk.seam, says: walk.says, truth },
    }),
    near('walked/difference', 'mm', worst.off, 0, allowed, {
      where: () => placeOf(seam, worst.at),
      about: { seam: walk.seam, from: worst.from, to: worst.to },
    }),
  );
}

/** The walk of a seam on the pieces of the attempt's fabric, also where it was given as another set that means the same pieces. */
function walkOf(work: Work, name: string, fabric: Fabric, own: Piece | undefined): Walk | undefined {
  for (const w of work.walked) {
    if (w.seam === name && (w.as === fabric || piecesOf(work.pieces, w.as)[0] === own)) return w;
  }
  return undefined;
}

/**
 * Step 13: each seam of `names.seams` was walked on the seam line, on the pieces of the attempt's fabric, it agrees interval by
 * interval but for what is eased, and the learner said so. Tolerance `walk` in mm.
 */
export const walked: Check = ({ after, fabric }, spec) => {
  const [own] = piecesOf(after.pieces, fabric);
  const findings: Finding[] = [];
  for (const name of names(spec, 'seams')) {
    const walk = walkOf(after, name, fabric, own);
    const seam = walk && seamOf(after.pieces, name, fabric);
    if (walk && seam) judge(walk, seam, after, spec, findings);
    else findings.push(missing('walked/done', { about: { seam: name } }));
  }
  return findings;
};
