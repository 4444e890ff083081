import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { distance, sub } from '../../geometry/point.ts';
import { angleBetween } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import { findEdge } from '../../pattern/outline.ts';
import { between, dimension, missing, names, near, number, tolerance } from '../finding.ts';
import { slashesOn, wholeEdge, type Slashed } from '../slashes.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

interface Laid {
  readonly slash: Slashed;
  readonly start: Point;
  /** mm along the edge. */
  readonly along: number;
}

/** Where the line bends: the alternate pivot; none in a straight one. */
const viaOf = ({ slash }: Laid): Point | undefined =>
  slash.line.chain.length > 1 ? slash.line.chain[0]!.d : undefined;

/** How each line lies to its neighbour. */
function neighbours(a: Laid, b: Laid, spec: CheckSpec): Finding[] {
  const about = { slash: b.slash.line.id };
  const where = dimension(a.start, b.start);
  const range = [number(spec, 'least'), number(spec, 'most')] as const;
  const found: Finding[] = [
    between('slashes-laid/spacing', 'mm', b.along - a.along, range, tolerance(spec, 'spacing'), {
      where,
      about,
    }),
  ];
  if (spec.tolerances?.['parallel'] === undefined) return found;
  const [p, q] = [a, b].map(({ slash }) => slash.line.chain[0]!);
  const angle = Math.abs(angleBetween(sub(p!.d, p!.a), sub(q!.d, q!.a)));
  return [
    ...found,
    near('slashes-laid/parallel', 'rad', angle, 0, tolerance(spec, 'parallel'), { where, about }),
  ];
}

/**
 * Several slashes from the edge `names.edge`: `numbers.count` of them, each `least` to `most` mm of edge from its neighbour; parallel where a
 * tolerance `parallel` (radians) is given; over alternate pivots `near` to `far` mm from what they end in, where these numbers are given.
 * Judged on the lines as drawn. Tolerances `spacing` and `pivot` in mm.
 */
export const slashesLaid: Check = ({ after }, spec) => {
  const edge = names(spec, 'edge')[0]!;
  const chain = after.opened && findEdge(after.opened, edge)?.chain;
  if (!chain) return [missing('slashes-laid/count', { about: { edge } })];
  const laid = slashesOn(after)
    .filter(({ line }) => wholeEdge(line.ends[0] ?? '') === edge)
    .map((slash): Laid => {
      const start = chainStart(slash.line.chain);
      return { slash, start, along: nearestOnChain(chain, start).length };
    })
    .sort((a, b) => a.along - b.along);
  const count = number(spec, 'count');
  if (laid.length < count)
    return [missing('slashes-laid/count', { about: { edge, count, found: laid.length } })];
  const exact = { value: 0, reason: 'as-many-as-asked' };
  const findings: Finding[] = [
    near('slashes-laid/count', 'count', laid.length, count, exact, { about: { edge } }),
  ];
  const nearest = spec.numbers?.['near'];
  for (const one of laid) {
    if (nearest === undefined) break;
    const via = viaOf(one);
    const tip = chainEnd(one.slash.line.chain);
    const about = { slash: one.slash.line.id };
    if (via === undefined) findings.push(missing('slashes-laid/pivot', { about }));
    else
      findings.push(
        between(
          'slashes-laid/pivot',
          'mm',
          distance(via, tip),
          [nearest, number(spec, 'far')],
          tolerance(spec, 'pivot'),
          {
            where: dimension(via, tip),
            about,
          },
        ),
      );
  }
  laid.slice(1).forEach((one, i) => findings.push(...neighbours(laid[i]!, one, spec)));
  return findings;
};
