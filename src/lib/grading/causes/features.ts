import type { Isometry, Point } from '../../geometry/types.ts';
import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import { applyTo, IDENTITY } from '../../geometry/isometry.ts';
import { register } from '../../geometry/register.ts';
import { landmark } from '../../pattern/outline.ts';
import type { Part } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';
import { isBack } from '../table.ts';

/**
 * Tables this near to each other (mm at full size) are one: three times what a hand trembles on half-scale paper (0.8 mm at half scale, 1.6
 * at full size; ours).
 */
export const NEAR = 5;

/**
 * What a table looks like, as points in mm and numbers, however it was made: what is compared when a wrong procedure is held against a
 * learner's table. Points are seen from the sheet that keeps the neck at centre front, so that it does not matter which part was turned.
 */
export interface Features {
  readonly points: ReadonlyMap<string, Point>;
  /** mm. */
  readonly lengths: ReadonlyMap<string, number>;
  readonly words: ReadonlyMap<string, string>;
}

/** Brings a sheet back to where its landmarks lie on the paper before any cut. */
function backTo(part: Part, work: Work): Isometry {
  if (!work.opened) return IDENTITY;
  const from: Point[] = [];
  const to: Point[] = [];
  for (const id of Object.keys(part.landmarks)) {
    // The sewn point of a dart that was drawn on lies off the paper and goes with no sheet.
    const on = id.endsWith('sewn-point') ? undefined : landmark(work.opened, id);
    if (on === undefined) continue;
    from.push(part.landmarks[id]!);
    to.push(on);
  }
  return from.length >= 2 ? register(from, to).motion : IDENTITY;
}

/** A typed width has no trembling in it: off by this (mm; a careful seam, trade notes, read), it counts as far off as `NEAR`. */
const CAREFUL = 1.6;
const TYPED = NEAR / CAREFUL;

/** The features of the learner's own front and of its copies, and the widths given to all pieces. */
export function featuresOf(work: Work): Features {
  const points = new Map<string, Point>();
  const lengths = new Map<string, number>();
  const words = new Map<string, string>();
  for (const piece of work.pieces) {
    for (const [group, width] of Object.entries(piece.allowances))
      lengths.set(`allowance ${piece.id} ${group}`, width * TYPED);
    if (isBack(piece)) continue;
    // A copy's edges and darts are called as on the piece it was copied from.
    const copy = piece.id.includes('@') ? piece.id.slice(piece.id.indexOf('@')) : '';
    const home = piece.parts.find((p) => p.landmarks['neck-centre'] !== undefined) ?? piece.parts[0]!;
    const back = backTo(home, work);
    for (const part of piece.parts)
      for (const edge of part.edges) {
        points.set(`${edge.id}${copy} from`, applyTo(back, chainStart(edge.chain)));
        points.set(`${edge.id}${copy} to`, applyTo(back, chainEnd(edge.chain)));
      }
    for (const hinge of piece.hinges) words.set(`hinge ${hinge.dart}${copy}`, hinge.intact ? 'holds' : 'cut');
    for (const one of piece.finished ?? []) {
      lengths.set(`back-off ${one.dart}${copy}`, one.by);
      words.set(`fold ${one.dart}${copy}`, one.fold ?? 'none');
    }
    for (const one of piece.fullness ?? []) {
      lengths.set(`fullness ${one.dart}${copy}`, one.fullness);
      lengths.set(`fullness before ${one.dart}${copy}`, one.before);
      lengths.set(`fullness after ${one.dart}${copy}`, one.after);
      words.set(`fullness ${one.dart}${copy}`, one.as);
    }
    for (const one of piece.smoothed ?? []) lengths.set(`smoothed ${piece.id} ${one.at}`, one.reach);
  }
  for (const line of work.lines) {
    points.set(`${line.id} begins`, chainStart(line.chain));
    points.set(`${line.id} ends`, chainEnd(line.chain));
  }
  for (const [what, at] of Object.entries(work.identified)) points.set(`found ${what}`, at);
  for (const [what, value] of Object.entries(work.readings))
    // An angle is judged by what it does at the end of a leg of 200 mm.
    lengths.set(`read ${what}`, what.endsWith('angle') ? value * LEVER : value);
  for (const one of work.walked) words.set(`walked ${one.seam} ${one.as ?? ''}`, `${one.along} ${one.says}`);
  return { points, lengths, words };
}

const LEVER = 200;

/**
 * How far two tables are apart: the largest distance of any of their points and numbers, mm. Infinity where one has something that the other
 * has not, or another word.
 */
export function apart(a: Features, b: Features): number {
  if (a.points.size !== b.points.size || a.lengths.size !== b.lengths.size || a.words.size !== b.words.size)
    return Infinity;
  let most = 0;
  for (const [key, word] of a.words) if (b.words.get(key) !== word) return Infinity;
  for (const [key, p] of a.points) {
    const q = b.points.get(key);
    if (q === undefined) return Infinity;
    most = Math.max(most, distance(p, q));
  }
  for (const [key, length] of a.lengths) {
    const other = b.lengths.get(key);
    if (other === undefined) return Infinity;
    most = Math.max(most, Math.abs(length - other));
  }
  return most;
}
