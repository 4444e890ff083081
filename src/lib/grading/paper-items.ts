import { sin } from '../geometry/trig.ts';
import { connectorsOf } from '../pattern/connector-measure.ts';
import { dartAngle, drawnAngle, intake, legLength } from '../pattern/measure.ts';
import { openings } from '../pattern/openings.ts';
import { seamGroups } from '../pattern/outline.ts';
import type { Piece } from '../pattern/types.ts';
import type { Fabric, Work } from '../recipe/types.ts';
import { RULER } from './paper-scale.ts';
import { valueOn, type PaperItem } from './paper-value.ts';
import { isBack, piecesFor } from './table.ts';

/** An item with its piece, and whether the step made or changed it; else it lies on the paper from before. */
export interface Measurable extends Required<PaperItem> {
  readonly fresh: boolean;
}

/** Numbers closer than this are rounding, mm or rad. */
const SAME = 1e-6;

/** Darts that lie open on a piece: those closed, or drawn over for fullness, have nothing to lay a ruler to. */
function openDarts(piece: Piece): readonly string[] {
  if (isBack(piece)) return [];
  const over = new Set((piece.fullness ?? []).flatMap(({ darts }) => darts));
  return piece.darts
    .filter(({ id, state }) => state !== 'closed' && !over.has(id) && (intake(piece, id) ?? 0) > 1)
    .map(({ id }) => id);
}

/** Whether both legs are as long: then the intake is 2 L sin(θ/2) (trade notes; derived). With alternate pivots they are not. */
function legsAlike(piece: Piece, dart: string): boolean {
  const [angle, length, width] = [dartAngle(piece, dart), legLength(piece, dart), intake(piece, dart)];
  if (angle === undefined || length === undefined || width === undefined) return false;
  return Math.abs(width - 2 * length * sin(Math.abs(angle) / 2)) < RULER.value;
}

/** Everything that can be measured on the paper of one piece, darts first. */
function itemsOf(piece: Piece): readonly Required<PaperItem>[] {
  const items: Required<PaperItem>[] = [];
  const add = (what: PaperItem['what'], about: string) => items.push({ what, about, piece: piece.id });
  for (const dart of openDarts(piece)) {
    add('dart-angle', dart);
    if (legsAlike(piece, dart)) add('leg-length', dart);
    add('intake', dart);
  }
  for (const dart of connectorsOf(piece)) {
    add('connector-length', dart);
    add('connector-angle', dart);
  }
  const treated = new Set(piece.treatments.map(({ dart }) => dart));
  if (!isBack(piece))
    for (const { dart, width } of openings(piece)) if (width > 1 && !treated.has(dart)) add('opening', dart);
  const seams = new Set(seamGroups(piece).map(({ id }) => id));
  for (const id of seams) if (!/^(dart|connector)\//.test(id)) add('seam-length', id);
  for (const [group, width] of Object.entries(piece.allowances)) if (width > 0) add('allowance-width', group);
  return items;
}

/** The piece as it was before: a copy is held against what it was copied from. */
const earlier = (before: Work, piece: Piece): Piece | undefined =>
  before.pieces.find(({ id }) => id === piece.id) ??
  before.pieces.find(({ id }) => id === piece.id.replace(/@.*/, ''));

const differ = (a: number | undefined, b: number | undefined): boolean =>
  a === undefined || b === undefined ? a !== b : Math.abs(a - b) > SAME;

/** A dart's three measures go together: one that was redrawn, moved or is to be read is measured anew. */
function dartFresh(before: Work, after: Work, piece: Piece, was: Piece | undefined, dart: string): boolean {
  if (
    before.readings !== after.readings &&
    Object.keys(before.readings).length !== Object.keys(after.readings).length
  )
    return true;
  if (was === undefined || !openDarts(was).includes(dart)) return true;
  return [dartAngle, drawnAngle, legLength, intake].some((of) => differ(of(was, dart), of(piece, dart)));
}

/**
 * What can be measured on paper once a step was worked, from the table before and after it: fresh is what the step made, changed or asks to be
 * read. Of the back only that, since a practice sheet has the front alone.
 */
export function measurable(before: Work, after: Work, fabric: Fabric): readonly Measurable[] {
  return piecesFor(after, fabric).flatMap((piece) => {
    const was = earlier(before, piece);
    return itemsOf(piece)
      .map((item) => {
        const ofDart = ['dart-angle', 'leg-length', 'intake'].includes(item.what);
        const fresh = ofDart
          ? dartFresh(before, after, piece, was, item.about)
          : differ(was && valueOn(was, item), valueOn(piece, item));
        return { ...item, fresh };
      })
      .filter(({ fresh }) => fresh || !isBack(piece));
  });
}
