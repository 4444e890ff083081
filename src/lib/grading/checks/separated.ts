import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { signedArea } from '../../geometry/outline.ts';
import { cross, sub } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { chainOf, landmark, legsOf } from '../../pattern/outline.ts';
import type { Piece } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';
import { fact, missing, names, near, refusedBy, tolerance } from '../finding.ts';
import { ownFront, pieceOf } from '../table.ts';
import type { Check } from '../types.ts';

/** Paper of some pieces, sheet by sheet, mm². */
function paperOf(pieces: readonly Piece[]): number {
  let sum = 0;
  for (const { parts } of pieces) for (const part of parts) sum += Math.abs(signedArea(chainOf(part.edges)));
  return sum;
}

/** Whether a dart was cut: it is not the sewn one any more. */
function isCut(pieces: readonly Piece[], id: string): boolean {
  for (const { darts } of pieces) for (const d of darts) if (d.id === id && d.state !== 'sewn') return true;
  return false;
}

/** The point that a dart's connector was drawn from. */
function tipOf(work: Work, dart: string): Point | undefined {
  for (const line of work.lines) {
    const foot = line.feet[dart];
    if (foot) return foot.tip;
  }
  return undefined;
}

/** The triangle between the outer ends of a dart's legs and a point, mm². */
const wedge = (a: Point, b: Point, p: Point): number => Math.abs(cross(sub(a, p), sub(b, p))) / 2;

/** The paper of the opened front once its darts are cut to their tips: a working dart takes more out than the sewn one, mm². */
function paperExpected(opened: Piece, work: Work, own: readonly Piece[]): number {
  let area = paperOf([opened]);
  for (const dart of opened.darts) {
    const legs = legsOf(opened, dart);
    const to = tipOf(work, dart.id) ?? landmark(opened, dart.bustPoint);
    if (!legs || !to || !isCut(own, dart.id)) continue;
    const a = chainStart(legs.into.chain);
    const b = chainEnd(legs.outOf.chain);
    area -= wedge(a, b, to) - wedge(a, b, chainEnd(legs.into.chain));
  }
  return area;
}

/** Step 9: the front is two pieces (`names.pieces`), and no paper was lost or doubled. Tolerance `area` in mm². */
export const separated: Check = ({ after, unfollowed }, spec) => {
  if (!names(spec, 'pieces').every((id) => pieceOf(after, id))) {
    const refusal = unfollowed.find(({ command }) => command.do === 'separate');
    if (!refusal) return [missing('separated/pieces')];
    return [refusedBy('separated/pieces', refusal.refused)];
  }
  const findings = [fact('separated/pieces', true)];
  if (!after.opened) return findings;
  const own = ownFront(after);
  const expected = paperExpected(after.opened, after, own);
  findings.push(near('separated/area', 'mm2', paperOf(own), expected, tolerance(spec, 'area')));
  return findings;
};
