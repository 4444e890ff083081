import { applyTo } from '../geometry/isometry.ts';
import { lerp, sub } from '../geometry/point.ts';
import type { Chain, Point } from '../geometry/types.ts';
import type { Finding } from '../grading/types.ts';
import type { Reading } from '../machines/tool-spec.ts';
import type { Piece } from '../pattern/types.ts';
import { dartName } from '../strings/names.ts';
import { readingWords } from '../strings/table.ts';
import { formatAngle, formatLength, type Units } from '../strings/units.ts';
import { pieceBox } from './boxes.ts';
import type { Label } from './labels.ts';
import { placeOf, type Layout } from './layout.ts';

export type Tone = Label['tone'];

/** A dimension line between two points of the table, mm. */
export interface Dimension {
  readonly id: string;
  readonly from: Point;
  readonly to: Point;
  readonly text: string;
  readonly tone: Tone;
  /** For an angle: the directions of its two rays from `from`. */
  readonly rays?: readonly [Point, Point];
}

/** Live measures as dimension lines. */
export function readingMarks(readings: readonly Reading[], layout: Layout, units: Units): Dimension[] {
  return readings.flatMap((reading, i): Dimension[] => {
    if (!reading.from || (reading.id === 'opened' && reading.value < 0.05)) return [];
    const place = placeOf(layout, reading.piece);
    const from = applyTo(place, reading.from);
    const to = reading.to ? applyTo(place, reading.to) : from;
    const value =
      reading.unit === 'rad' ? formatAngle(reading.value) : formatLength(Math.abs(reading.value), units);
    const text = [readingWords(reading.id), value].filter((word) => word !== '').join(' ');
    // Two pieces may have a measure of one name.
    const base = { id: `${i} ${reading.id} ${reading.dart ?? ''}`, from, to, text, tone: 'reading' as const };
    if (!reading.other) return [base];
    const other = applyTo(place, reading.other);
    return [{ ...base, to: from, rays: [sub(to, from), sub(other, from)] }];
  });
}

/** What a measure is of: a dart of the opened front by its bust point, else by its name. */
const bustOf = (dart: string): string =>
  /^(left|right)$/.test(dart) ? `${dart} bust point` : dartName(dart);

/** What a screen reader hears of the live measures. */
export const spokenReadings = (readings: readonly Reading[], units: Units): string =>
  readings
    .map((one) =>
      [
        one.dart ? bustOf(one.dart) : '',
        readingWords(one.id),
        one.unit === 'rad' ? formatAngle(one.value) : formatLength(one.value, units),
      ]
        .filter((word) => word !== '')
        .join(' '),
    )
    .join('; ');

/** A finding at its place on the table. */
export interface FindingMark {
  readonly id: string;
  readonly tone: Tone;
  readonly text: string;
  readonly at: Point;
  readonly from?: Point;
  readonly to?: Point;
  readonly ghost?: { readonly chain: Chain; readonly piece: string };
}

const TONE = { right: 'right', wrong: 'wrong', missing: 'wrong', note: 'note' } as const;

/** The piece a finding speaks of: the one it names, else the one on whose box it lies. */
function pieceOf(finding: Finding, at: Point, pieces: readonly Piece[]): string {
  const named = pieces.find((piece) => piece.id === finding.about?.['piece']);
  if (named) return named.id;
  const inside = pieces.find((piece) => {
    const box = pieceBox(piece);
    return at.x >= box.minX - 5 && at.x <= box.maxX + 5 && at.y >= box.minY - 5 && at.y <= box.maxY + 5;
  });
  return (inside ?? pieces[0])?.id ?? 'front';
}

function valueOf({ unit, measured }: Finding, units: Units): string {
  if (measured === undefined) return '';
  if (unit === 'mm') return formatLength(measured, units);
  return unit === 'rad' ? formatAngle(measured) : '';
}

/** Findings as marks: a ring at a point, a dimension line, or a ghost. Those that are right are drawn without words. */
export function findingMarks(
  findings: readonly Finding[],
  pieces: readonly Piece[],
  layout: Layout,
  units: Units,
): FindingMark[] {
  return findings.flatMap((finding, i): FindingMark[] => {
    const { where } = finding;
    if (!where) return [];
    const anchor =
      where.kind === 'point'
        ? where.at
        : where.kind === 'dimension'
          ? lerp(where.from, where.to, 0.5)
          : where.chain[0]?.a;
    if (!anchor) return [];
    const piece = pieceOf(finding, anchor, pieces);
    const place = placeOf(layout, piece);
    const tone = TONE[finding.state];
    const text = tone === 'right' ? '' : valueOf(finding, units);
    const base = { id: `${i} ${finding.code}`, tone, text, at: applyTo(place, anchor) };
    if (where.kind === 'dimension')
      return [{ ...base, from: applyTo(place, where.from), to: applyTo(place, where.to) }];
    return where.kind === 'ghost' ? [{ ...base, ghost: { chain: where.chain, piece } }] : [base];
  });
}
