import type { Fabric, Work } from '../recipe/types.ts';
import { missing, near } from './finding.ts';
import { agreements } from './paper-agrees.ts';
import { paperCause } from './paper-causes.ts';
import { HALF, PROTRACTOR, RULER } from './paper-scale.ts';
import { isAngle, onTable, type PaperItem } from './paper-value.ts';
import type { Finding } from './types.ts';

/** One measured value. */
export interface PaperEntry extends PaperItem {
  /** mm on the half-scale paper, or radians; an angle is the same at any scale. */
  readonly value: number;
}

/**
 * Values measured on half-scale paper against a table, the worked or the learner's own: one finding for each entry, in their order,
 * and behind them whether a dart that is off agrees with itself (`agreements`).
 * Lengths stay at half scale in the findings (mm on paper), angles are radians. An entry about something that the table does not have,
 * or whose value is no number, is `missing`. What is off has a cause where exactly one mistake in measuring explains it (`paperCause`).
 */
export function compareWithPaper(work: Work, entries: readonly PaperEntry[], fabric: Fabric): Finding[] {
  const found = entries.map((entry) => {
    const { what, value } = entry;
    const code = `paper/${what}`;
    const there = onTable(work, entry, fabric);
    const piece = there?.piece.id ?? entry.piece;
    const named = what === 'seam-length' || what === 'allowance-width' ? 'group' : 'open';
    const about = { what, [named]: entry.about, ...(piece !== undefined && { piece }) };
    if (there === undefined || !Number.isFinite(value)) return missing(code, { about });
    const angle = isAngle(what);
    const allowed = angle ? PROTRACTOR : RULER;
    const expected = angle ? there.value : there.value * HALF;
    const cause = () => paperCause(there.piece, entry, there.value, value, allowed.value);
    return near(code, angle ? 'rad' : 'mm', value, expected, allowed, { about, cause });
  });
  return [...withoutSkew(entries, found), ...agreements(entries, found)];
}

/** A connector that runs askew is longer for that: no mistake in measuring is named for its length while its angle is off too. */
function withoutSkew(entries: readonly PaperEntry[], found: readonly Finding[]): readonly Finding[] {
  const askew = entries.flatMap(({ what, about }, i) =>
    what === 'connector-angle' && found[i]!.state === 'wrong' ? [about] : [],
  );
  return found.map((finding, i) => {
    const { what, about } = entries[i]!;
    if (what !== 'connector-length' || !askew.includes(about)) return finding;
    const { cause: _, ...rest } = finding;
    return rest;
  });
}
