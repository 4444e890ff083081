import type { InnerLine, Piece } from '../../pattern/types.ts';
import { sharpestJoint, tightest } from '../curvature.ts';
import { at, between, fact, names, near, number, tolerance } from '../finding.ts';
import { pieceOf } from '../table.ts';
import type { Check, Finding } from '../types.ts';

/** What the paper itself found: each code with the check's own word for it. An end that stops short is for `line-ends`. */
const FAULTS = [
  ['line-leaves-piece', 'line-shape/inside'],
  ['line-crosses-itself', 'line-shape/crosses-itself'],
  ['line-meets-dart', 'line-shape/meets-dart'],
] as const;

function faults(line: InnerLine, findings: Finding[]): void {
  for (const [code, told] of FAULTS) {
    const found = line.faults?.find((fault) => fault.code === code);
    if (!found) {
      findings.push(fact(told, true));
      continue;
    }
    const about = found.dart === undefined ? undefined : { dart: found.dart };
    findings.push(fact(told, false, { where: at(found.at), about }));
  }
}

function lineIn(front: Piece, id: string | undefined): InnerLine | undefined {
  for (const part of front.parts) for (const inner of part.lines) if (inner.id === id) return inner;
  return undefined;
}

const SWEEP = { value: 0, reason: 'calm-sweep' };
const SEWABLE = { value: 0, reason: 'sewable-curve' };

/**
 * Step 3: the line `names.line` can be cut and sewn: inside the paper, not across itself or a dart, without a kink (tolerance `kink`,
 * radians) and nowhere tighter than `radius` mm. Of a line drawn in one stroke the kinks of the stroke count as well.
 */
export const lineShape: Check = ({ after }, spec) => {
  const front = pieceOf(after, 'front');
  const line = front && lineIn(front, names(spec, 'line')[0]);
  if (!line) return [];
  const joint = sharpestJoint(line.chain);
  const bend = tightest(line.chain);
  const range = [number(spec, 'radius'), 1e6] as const;
  const findings: Finding[] = [];
  faults(line, findings);
  findings.push(
    near('line-shape/kink', 'rad', joint.angle, 0, tolerance(spec, 'kink'), { where: at(joint.at) }),
    between('line-shape/radius', 'mm', Math.min(bend.radius, 1e6), range, SEWABLE, { where: at(bend.at) }),
  );
  const kinks = after.lines.find((drawn) => drawn.id === line.id)?.kinks;
  if (kinks !== undefined) findings.push(near('line-shape/kinks', 'count', kinks, 0, SWEEP));
  return findings;
};
