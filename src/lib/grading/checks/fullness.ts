import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { findEdge } from '../../pattern/outline.ts';
import type { Fullness, Piece } from '../../pattern/types.ts';
import { between, dimension, fact, missing, names, number, tolerance } from '../finding.ts';
import { slashesFrom, slashesOn } from '../slashes.ts';
import { ownFront } from '../table.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

function judge(piece: Piece, found: Fullness, spec: CheckSpec, fabric: string): Finding[] {
  const edge = findEdge(piece, found.edge);
  const about = { dart: found.dart, as: found.as };
  if (!edge) return [missing('fullness/drawn', { about })];
  const where = dimension(chainStart(edge.chain), chainEnd(edge.chain));
  const wanted = names(spec, 'as')[0]!;
  const reach = [number(spec, 'least'), number(spec, 'most')] as const;
  const findings: Finding[] = [
    fact('fullness/kind', found.as === wanted, { where, about: { ...about, wanted } }),
    between('fullness/before', 'mm', found.before, reach, tolerance(spec, 'reach'), { where, about }),
    between('fullness/after', 'mm', found.after, reach, tolerance(spec, 'reach'), { where, about }),
  ];
  const notches = piece.notches.filter((n) => n.edge === found.edge && !n.ghost);
  findings.push(fact('fullness/notches', notches.length >= 2, { where, about }));
  if (found.as === 'tucks' && wanted === 'tucks')
    findings.push(
      between(
        'fullness/tucks',
        'count',
        found.tucks ?? 0,
        [number(spec, 'least-tucks'), number(spec, 'most-tucks')],
        { value: 0, reason: 'as-many-as-asked' },
        { where, about },
      ),
    );
  const limit = spec.numbers?.[`limit-${fabric}`];
  if (limit !== undefined)
    findings.push(
      between('fullness/limit', 'mm', found.fullness, [0, limit], tolerance(spec, 'limit'), { where, about }),
    );
  return findings;
}

/**
 * The opening at `names.edge` became `names.as` ('gathers', 'tucks', 'ease'): the cut edge runs smoothly over it from `least` to `most` mm of seam on
 * either side, with a notch at both ends; tucks `least-tucks` to `most-tucks`; no more than `limit-<fabric>` mm where that is given.
 * Tolerances `reach` and `limit` in mm.
 */
export const fullness: Check = ({ after, fabric }, spec) => {
  const edge = names(spec, 'edge')[0]!;
  const [slash] = slashesFrom(slashesOn(after), [edge]);
  const dart = slash?.dart?.id;
  for (const piece of ownFront(after)) {
    const found = piece.fullness?.find((one) => dart !== undefined && one.darts.includes(dart));
    if (found) return judge(piece, found, spec, fabric);
  }
  return [missing('fullness/drawn', { about: { edge, dart: dart ?? edge } })];
};
