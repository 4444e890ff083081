import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import { landmark } from '../../pattern/outline.ts';
import type { Piece } from '../../pattern/types.ts';
import { between, dimension, fact, missing, names, near, number, refusedBy, tolerance } from '../finding.ts';
import { placeOn } from '../place-on.ts';
import { slashesFrom, slashesOn, wholeEdge, type Slashed } from '../slashes.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

/** One id for all slashes, or one for each. */
const nth = (ids: readonly string[], i: number): string => ids[i] ?? ids[0]!;

/** A number for one slash (`least-2`), or the one for all (`least`). */
const numberOf = (spec: CheckSpec, name: string, i: number): number =>
  spec.numbers?.[`${name}-${i + 1}`] ?? number(spec, name);

function judge(slash: Slashed, paper: Piece, spec: CheckSpec, i: number, made: string): Finding[] {
  const edge = names(spec, 'edges')[i]!;
  const { chain } = slash.line;
  const start = chainStart(chain);
  const tip = chainEnd(chain);
  const about = { slash: slash.line.id, edge, made };
  const findings: Finding[] = [fact('slash-drawn/edge', true, { about })];
  const place = placeOn(paper, edge, nth(names(spec, 'from'), i), start);
  if (place !== undefined) {
    const [along, length] = place;
    const range = [numberOf(spec, 'least', i) * length, numberOf(spec, 'most', i) * length] as const;
    findings.push(
      between('slash-drawn/place', 'mm', along, range, tolerance(spec, 'place'), {
        where: { kind: 'point', at: start },
        about: { ...about, landmark: nth(names(spec, 'from'), i) },
      }),
    );
  }
  const wanted = nth(names(spec, 'bust'), i);
  const bust = landmark(paper, wanted);
  if (bust === undefined) return findings;
  const allowed = tolerance(spec, 'tip');
  const reached = paper.parts
    .flatMap((part) => Object.entries(part.landmarks))
    .flatMap(([id, at]) => (id !== wanted && distance(at, tip) <= allowed.value ? [id] : []));
  const other = reached.find((id) => id.endsWith('/bust-point'));
  const sewn = reached.some((id) => id.endsWith('sewn-point'));
  findings.push(
    near('slash-drawn/tip', 'mm', distance(tip, bust), 0, allowed, {
      where: dimension(tip, bust),
      cause: sewn ? { code: 'drawn-to-sewn-point' } : undefined,
      about: { ...about, landmark: wanted, ...(other !== undefined && { reached: other }) },
    }),
  );
  return findings;
}

/**
 * The slash lines: one from each of `names.edges` to its bust point `names.bust`, starting between `numbers.least` and `numbers.most` of
 * the edge's length from the landmark `names.from`. Numbers and names may be given for each slash (`least-2`) or once. Judged on the lines as
 * they lie on the paper, cut or not, so that a pivoted dart counts as well. Tolerances `place` and `tip` in mm.
 */
export const slashDrawn: Check = ({ after, unfollowed, commands }, spec) => {
  const paper = after.opened;
  if (!paper) return [missing('slash-drawn/drawn')];
  const edges = names(spec, 'edges');
  const pinned = new Set(commands.flatMap((c) => (c.do === 'pivot' ? [c.slash] : [])));
  const madeBy = ({ line }: Slashed): string => (pinned.has(line.id) ? 'pivot' : 'slash');
  const slashes = slashesOn(after);
  const found = slashesFrom(slashes, edges);
  const others = slashes.filter((s) => !found.includes(s));
  const findings = found.flatMap((slash, i): Finding[] => {
    if (slash) return judge(slash, paper, spec, i, madeBy(slash));
    const other = others.shift();
    const about = { wanted: edges[i]!, edge: edges[i]! };
    if (other) {
      const edge = wholeEdge(other.line.ends[0] ?? '');
      const cause = { code: 'other-edge' };
      const where = { kind: 'point', at: chainStart(other.line.chain) } as const;
      return [
        fact('slash-drawn/edge', false, {
          about: { ...about, edge, slash: other.line.id, made: madeBy(other) },
          cause,
          where,
        }),
      ];
    }
    const refusal = unfollowed.find(({ command }) => ['draw-slash', 'pivot'].includes(command.do));
    return [
      refusal
        ? refusedBy('slash-drawn/drawn', refusal.refused, about)
        : missing('slash-drawn/drawn', { about }),
    ];
  });
  for (const extra of others)
    findings.push(
      fact('slash-drawn/extra', false, {
        about: { slash: extra.line.id, edge: wholeEdge(extra.line.ends[0] ?? ''), made: madeBy(extra) },
        where: { kind: 'point', at: chainStart(extra.line.chain) },
      }),
    );
  return findings;
};
