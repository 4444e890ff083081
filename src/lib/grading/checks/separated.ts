import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { signedArea } from '../../geometry/outline.ts';
import { cross, sub } from '../../geometry/point.ts';
import { chainOf, landmark, legsOf } from '../../pattern/outline.ts';
import type { Piece } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';
import { fact, missing, names, near, refusedBy, tolerance } from '../finding.ts';
import { ownFront, pieceOf } from '../table.ts';
import type { Check } from '../types.ts';

const paperOf = (pieces: readonly Piece[]): number =>
  pieces.reduce(
    (sum, p) => p.parts.reduce((s, part) => s + Math.abs(signedArea(chainOf(part.edges))), sum),
    0,
  );

/** The paper of the opened front once its darts are cut to their tips: a working dart takes more out than the sewn one, mm². */
function paperExpected(opened: Piece, work: Work): number {
  let area = paperOf([opened]);
  for (const dart of opened.darts) {
    const legs = legsOf(opened, dart);
    const cut = ownFront(work).some((piece) =>
      piece.darts.some((d) => d.id === dart.id && d.state !== 'sewn'),
    );
    const tip = work.lines.find((line) => line.feet[dart.id])?.feet[dart.id]?.tip;
    const to = tip ?? landmark(opened, dart.bustPoint);
    if (!legs || !cut || !to) continue;
    const [a, b] = [chainStart(legs.into.chain), chainEnd(legs.outOf.chain)];
    const wedge = (p: typeof a) => Math.abs(cross(sub(a, p), sub(b, p))) / 2;
    area -= wedge(to) - wedge(chainEnd(legs.into.chain));
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
  const expected = paperExpected(after.opened, after);
  return [
    ...findings,
    near('separated/area', 'mm2', paperOf(ownFront(after)), expected, tolerance(spec, 'area')),
  ];
};
