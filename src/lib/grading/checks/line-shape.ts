import type { InnerLine } from '../../pattern/types.ts';
import { sharpestJoint, tightest } from '../curvature.ts';
import { at, between, fact, names, near, number, tolerance } from '../finding.ts';
import { pieceOf } from '../table.ts';
import type { Check, Finding } from '../types.ts';

/** What the paper itself found: each code with the check's own word for it. An end that stops short is for `line-ends`. */
const FAULTS = {
  'line-leaves-piece': 'inside',
  'line-crosses-itself': 'crosses-itself',
  'line-meets-dart': 'meets-dart',
} as const;

function faults(line: InnerLine): Finding[] {
  return Object.entries(FAULTS).map(([code, word]) => {
    const found = line.faults?.find((fault) => fault.code === code);
    if (!found) return fact(`line-shape/${word}`, true);
    const about = found.dart === undefined ? undefined : { dart: found.dart };
    return fact(`line-shape/${word}`, false, { where: at(found.at), about });
  });
}

/**
 * Step 3: the line `names.line` can be cut and sewn: inside the paper, not across itself or a dart, without a kink (tolerance `kink`,
 * radians) and nowhere tighter than `radius` mm.
 */
export const lineShape: Check = ({ after }, spec) => {
  const front = pieceOf(after, 'front');
  const id = names(spec, 'line')[0];
  const line = front?.parts.flatMap((part) => part.lines).find((inner) => inner.id === id);
  if (!line) return [];
  const joint = sharpestJoint(line.chain);
  const bend = tightest(line.chain);
  const sewable = { value: 0, reason: 'sewable-curve' };
  return [
    ...faults(line),
    near('line-shape/kink', 'rad', joint.angle, 0, tolerance(spec, 'kink'), { where: at(joint.at) }),
    between('line-shape/radius', 'mm', Math.min(bend.radius, 1e6), [number(spec, 'radius'), 1e6], sewable, {
      where: at(bend.at),
    }),
  ];
};
