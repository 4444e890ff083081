import type { Measurable } from '../../grading/paper-items.ts';
import { compareWithPaper, type PaperEntry } from '../../grading/paper.ts';
import type { PaperItem } from '../../grading/paper-value.ts';
import type { Finding } from '../../grading/types.ts';
import type { Problem } from '../../recipe/problem.ts';
import type { Fabric, Work } from '../../recipe/types.ts';
import { pieceName } from '../../strings/names.ts';
import { paperExpected, paperLabel, paperText, paperValue } from '../../strings/paper.ts';
import type { RulerUnits } from '../../strings/units.ts';

/** The name under which a measured item is kept. */
export const keyOf = ({ what, about, piece }: Required<PaperItem>): string => `${piece} ${what} ${about}`;

/** What a kept name is about: the word for the measure stands in its middle, and no id has a blank in it. */
const whatOf = (key: string): PaperItem['what'] => key.split(' ')[1] as PaperItem['what'];

/** Items by the piece that they are measured on, in the order of the pieces. */
export function byPiece(
  items: readonly Measurable[],
): readonly { readonly piece: string; readonly items: readonly Measurable[] }[] {
  const groups = new Map<string, Measurable[]>();
  for (const item of items) groups.set(item.piece, [...(groups.get(item.piece) ?? []), item]);
  return [...groups].map(([piece, own]) => ({ piece, items: own }));
}

/** The fields that can be read, as they are kept: mm on paper, or radians. Empty and unreadable ones are left out. */
export function valuesOf(
  typed: Readonly<Record<string, string>>,
  units: RulerUnits,
): Readonly<Record<string, number>> {
  const values: Record<string, number> = {};
  for (const [key, text] of Object.entries(typed)) {
    const value = paperValue(text, whatOf(key), units);
    if (value !== undefined && !Number.isNaN(value)) values[key] = value;
  }
  return values;
}

/** A field that cannot be read: the name it is kept under, which one it is, what was expected and what stands in it. */
export interface Unread extends Problem {
  readonly key: string;
}

/** What a thing that is measured goes by, from its id. */
export type Called = (about: string) => string;

/** The fields in which something stands that is no length or angle, in the order of the items. */
export const unreadOf = (
  items: readonly Measurable[],
  called: Called,
  typed: Readonly<Record<string, string>>,
  units: RulerUnits,
): readonly Unread[] =>
  items.flatMap((item) => {
    const key = keyOf(item);
    const found = typed[key] ?? '';
    if (!Number.isNaN(paperValue(found, item.what, units))) return [];
    const path = `${pieceName(item.piece)}, ${paperLabel(item.what, called(item.about))}`;
    return [{ key, path, expected: paperExpected(item.what, units), found: found.trim() }];
  });

/** The other way: kept values as they stand in the fields. */
export const textsOf = (
  values: Readonly<Record<string, number>>,
  units: RulerUnits,
): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(values).map(([key, value]) => [key, paperText(value, whatOf(key), units)]),
  );

/** What is compared: the items with a value. */
export const entriesOf = (
  items: readonly Measurable[],
  values: Readonly<Record<string, number>>,
): readonly PaperEntry[] =>
  items.flatMap((item) => {
    const value = values[keyOf(item)];
    return value === undefined ? [] : [{ what: item.what, about: item.about, piece: item.piece, value }];
  });

/** What comparing with a table finds, with the darts called as on the page. */
export const comparedOf = (
  table: Work,
  entries: readonly PaperEntry[],
  called: Called,
  fabric: Fabric,
): readonly Finding[] =>
  compareWithPaper(table, entries, fabric).map((finding) => {
    const open = finding.about?.['open'];
    return typeof open === 'string'
      ? { ...finding, about: { ...finding.about, open: called(open) } }
      : finding;
  });
