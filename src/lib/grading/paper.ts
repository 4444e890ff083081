import { radians } from '../geometry/trig.ts';
import { edgeLength } from '../pattern/edge-length.ts';
import { dartAngle, intake, legLength } from '../pattern/measure.ts';
import { openings } from '../pattern/openings.ts';
import { seamGroups } from '../pattern/outline.ts';
import type { Fabric, Work } from '../recipe/types.ts';
import { missing, near } from './finding.ts';
import { isBack, piecesFor } from './table.ts';
import type { Finding, Tolerance } from './types.ts';

/** What can be measured on paper: of a dart, of the opening that a dart left in a seam edge, or of a seam. */
export type PaperMeasure =
  'dart-angle' | 'intake' | 'leg-length' | 'opening' | 'seam-length' | 'allowance-width';

/** One measured value. */
export interface PaperEntry {
  readonly what: PaperMeasure;
  /** A dart's id; for `seam-length` and `allowance-width` a seam group. */
  readonly about: string;
  /** The piece, where several have that dart or seam; else the first one that has it. */
  readonly piece?: string;
  /** mm on the half-scale paper, or radians; an angle is the same at any scale. */
  readonly value: number;
}

/** The paper is half of the full size. */
const HALF = 0.5;

/** A ruler is read to 1/32 in on the half-scale paper (ours: half of the 1/16 in of careful work at full size), mm. */
export const RULER: Tolerance = { value: 0.8, reason: 'ruler' };
/** A protractor is read to a degree, rad. */
export const PROTRACTOR: Tolerance = { value: radians(1), reason: 'protractor' };

/** What the table has for an entry, mm at full size or radians; undefined where it has no such thing. */
function tableValue(work: Work, { what, about, piece: id }: PaperEntry, fabric: Fabric): number | undefined {
  const pieces = piecesFor(work, fabric).filter((piece) => id === undefined || piece.id === id);
  for (const piece of pieces) {
    let value: number | undefined;
    if (what === 'allowance-width') value = piece.allowances[about];
    else if (what === 'seam-length') {
      const groups = seamGroups(piece).filter((group) => group.id === about);
      // A dart's cap is folded away when the seam is sewn.
      if (groups.length > 0)
        value = groups
          .flatMap(({ edges }) => edges)
          .reduce((sum, edge) => sum + (edge.role === 'cap' ? 0 : edgeLength(edge)), 0);
    } else if (isBack(piece)) continue;
    else if (what === 'opening') value = openings(piece).find(({ dart }) => dart === about)?.width;
    else if (what === 'leg-length') value = legLength(piece, about);
    else if (what === 'intake') value = intake(piece, about);
    else {
      const angle = dartAngle(piece, about);
      // Paper shows no sign: how far it opens, or overlaps.
      value = angle === undefined ? undefined : Math.abs(angle);
    }
    if (value !== undefined) return value;
  }
  return undefined;
}

/**
 * Values measured on half-scale paper against a table, the worked or the learner's own: one finding for each entry, in their order.
 * Lengths stay at half scale in the findings (mm on paper), angles are radians. An entry about something that the table does not have,
 * or whose value is no number, is `missing`. A length twice or half of what it should be has the cause `scale-mixed`.
 */
export function compareWithPaper(work: Work, entries: readonly PaperEntry[], fabric: Fabric): Finding[] {
  return entries.map((entry) => {
    const { what, value } = entry;
    const about = { what, about: entry.about, ...(entry.piece !== undefined && { piece: entry.piece }) };
    const code = `paper/${what}`;
    const full = tableValue(work, entry, fabric);
    if (full === undefined || !Number.isFinite(value)) return missing(code, { about });
    if (what === 'dart-angle') return near(code, 'rad', value, full, PROTRACTOR, { about });
    const expected = full * HALF;
    const close = (to: number): boolean => Math.abs(value - to) <= RULER.value;
    const cause = () =>
      close(full) || close(expected * HALF) ? ({ code: 'scale-mixed' } as const) : undefined;
    return near(code, 'mm', value, expected, RULER, { about, cause });
  });
}
