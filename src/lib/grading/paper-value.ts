import { measuredConnector } from '../pattern/connector-measure.ts';
import { edgeLength } from '../pattern/edge-length.ts';
import { dartAngle, intake, legLength } from '../pattern/measure.ts';
import { openings } from '../pattern/openings.ts';
import { seamGroups } from '../pattern/outline.ts';
import type { Piece } from '../pattern/types.ts';
import type { Fabric, Work } from '../recipe/types.ts';
import { isBack, piecesFor } from './table.ts';

/** What can be measured on paper: of a dart, of its connector, of the opening that it left in a seam edge, or of a seam. */
export type PaperMeasure =
  | ('dart-angle' | 'intake' | 'leg-length')
  | ('connector-length' | 'connector-angle')
  | ('opening' | 'seam-length' | 'allowance-width');

/** Whether it is read off a protractor; all else is read off a ruler. */
export const isAngle = (what: PaperMeasure): boolean => what === 'dart-angle' || what === 'connector-angle';

/** Something on paper that can be measured. */
export interface PaperItem {
  readonly what: PaperMeasure;
  /** A dart's id; for `seam-length` and `allowance-width` a seam group. */
  readonly about: string;
  /** The piece, where several have that dart or seam; else the first one that has it. */
  readonly piece?: string;
}

/** Length of a seam as it is sewn, mm at full size: a dart's cap is folded away then. Undefined where the piece has no such seam. */
function seamLength(piece: Piece, about: string): number | undefined {
  let sum: number | undefined;
  for (const { id, edges } of seamGroups(piece))
    if (id === about)
      for (const edge of edges) sum = (sum ?? 0) + (edge.role === 'cap' ? 0 : edgeLength(edge));
  return sum;
}

/** What one piece has for an item, mm at full size or radians; undefined where it has no such thing. */
export function valueOn(piece: Piece, { what, about }: PaperItem): number | undefined {
  if (what === 'allowance-width') return piece.allowances[about];
  if (what === 'seam-length') return seamLength(piece, about);
  if (isBack(piece)) return undefined;
  if (what === 'opening') return openings(piece).find(({ dart }) => dart === about)?.width;
  if (what === 'connector-length') return measuredConnector(piece, about)?.length;
  if (what === 'connector-angle') return measuredConnector(piece, about)?.angle;
  if (what === 'leg-length') return legLength(piece, about);
  if (what === 'intake') return intake(piece, about);
  const angle = dartAngle(piece, about);
  // Paper shows no sign: how far it opens, or overlaps.
  return angle === undefined ? undefined : Math.abs(angle);
}

/** The piece of a table that has the item, with its value (mm at full size, or radians); undefined where none has. */
export function onTable(
  work: Work,
  item: PaperItem,
  fabric: Fabric,
): { readonly piece: Piece; readonly value: number } | undefined {
  for (const piece of piecesFor(work, fabric)) {
    if (item.piece !== undefined && piece.id !== item.piece) continue;
    const value = valueOn(piece, item);
    if (value !== undefined) return { piece, value };
  }
  return undefined;
}
