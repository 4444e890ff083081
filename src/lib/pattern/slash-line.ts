import type { Chain, Point, Segment } from '../geometry/types.ts';
import type { Dart, InnerLine, Part, Piece } from './types.ts';
import { distance } from '../geometry/point.ts';
import { hullBox, line, pointAt } from '../geometry/segment.ts';
import { nearestOnSegment } from '../geometry/nearest.ts';
import { chainLength } from '../geometry/chain.ts';
import { contains } from '../geometry/outline.ts';
import { intersectSegments } from '../geometry/meet.ts';
import { selfIntersections } from '../geometry/self-meeting.ts';
import { clearOf } from './clear.ts';
import { chainOf, findDart, findEdge, legIds } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { withPart, withPiece } from './with.ts';

/** Where a slash line runs, mm: straight from an edge to its end, or over one alternate pivot. */
export interface SlashPath {
  readonly from: Point;
  readonly via?: Point | undefined;
  readonly to: Point;
}

/** Ends within this distance (mm) of an edge or of a dart's tip are put onto it: rounding of an anchored point, not a near miss. */
const ON_PAPER = 1e-4;
/** Meetings this near (mm) to an end of the line are the end itself. */
const AT_END = 1e-3;
/** Two points of the path nearer than this (mm) are one. */
const SAME = 1e-6;

/** What cuts, turns, treatments and the halves of an opened front are called, and the marks of split edges and copies. */
const RESERVED = /^(connector|taped|bridge|freed|back)-|^(gap|right|left|back)\/|[.@]/;

/** Whether a dart is a slash: its legs are the banks of the cut, and it is called as the line was. */
export const isSlash = (d: Dart): boolean => d.upper === `${d.id}/a` || d.upper === `${d.id}/b`;

/** The slash line of that id while it is not cut, and the sheet that it is drawn on. */
export function findSlash(
  piece: Piece,
  id: string,
): { readonly part: Part; readonly line: InnerLine } | undefined {
  for (const part of piece.parts)
    for (const line of part.lines) if (line.id === id && line.kind === 'slash') return { part, line };
  return undefined;
}

/**
 * Draws (or draws again) a slash line on the sheet on whose edge it begins; of several sheets that meet there, on the one that
 * has the edge `edge`. It may end anywhere on that sheet, and it touches nothing else on the way; an end that all but meets the tip of
 * a dart is put onto it. Refusals: `name-taken`, `line-already-cut`, `line-without-length`, `line-crosses-itself`,
 * `slash-off-edge` when it does not begin on an edge, `slash-meets-dart`, `slash-leaves-piece`.
 */
export function drawSlash(piece: Piece, id: string, path: SlashPath, edge?: string): Outcome<Piece> {
  const fault = nameFault(piece, id);
  if (fault !== undefined) return refuse(fault, { line: id });
  if (![path.from, path.via ?? path.to, path.to].every((p) => Number.isFinite(p.x + p.y)))
    return refuse('line-without-length', { line: id });

  const begin = beginning(piece, path.from, edge);
  if (begin === undefined) return refuse('slash-off-edge', { line: id });
  const { part, from } = begin;
  const to = tipNear(piece, part, path.to, ON_PAPER) ?? path.to;
  const { via } = path;
  const straight = via === undefined || distance(via, from) <= SAME || distance(via, to) <= SAME;
  const chain = straight ? [line(from, to)] : [line(from, via), line(via, to)];
  const length = chainLength(chain);
  if (!(length > 1)) return refuse('line-without-length', { line: id });
  if (selfIntersections(chain, 1).length > 0) return refuse('line-crosses-itself', { line: id });
  const obstacle = obstacleOf(piece, part, chain);
  if (obstacle !== undefined)
    return refuse(obstacle.code, obstacle.dart === undefined ? { line: id } : { dart: obstacle.dart });

  const drawn: InnerLine = {
    id,
    kind: 'slash',
    chain,
    origin: { edge: id, from: 0, to: length },
    dart: undefined,
    notches: [],
    line: undefined,
    foot: undefined,
    faults: undefined,
  };
  const parts = piece.parts.map((p) => {
    const others = p.lines.filter((l) => l.id !== id);
    if (p === part) return withPart(p, { lines: [...others, drawn] });
    return others.length < p.lines.length ? withPart(p, { lines: others }) : p;
  });
  return done(withPiece(piece, { parts }));
}

/** Why a slash cannot be called so, or undefined. */
function nameFault(piece: Piece, id: string): 'name-taken' | 'line-already-cut' | undefined {
  if (RESERVED.test(id)) return 'name-taken';
  const dart = findDart(piece, id);
  if (dart !== undefined) return isSlash(dart) ? 'line-already-cut' : 'name-taken';
  const drawn = piece.parts.some((p) => p.lines.some((l) => l.id === id && l.kind !== 'slash'));
  const edges = [id, `${id}/a`, `${id}/b`].some((e) => findEdge(piece, e) !== undefined);
  return drawn || edges ? 'name-taken' : undefined;
}

/** The sheet that has p on an edge (the edge `wanted` first), and the edge's own point there, or its end when that is as near. */
function beginning(
  piece: Piece,
  p: Point,
  wanted: string | undefined,
): { readonly part: Part; readonly from: Point } | undefined {
  const here = { minX: p.x, minY: p.y, maxX: p.x, maxY: p.y };
  let found: { readonly part: Part; readonly from: Point } | undefined;
  for (const part of piece.parts) {
    for (const e of part.edges) {
      if (found !== undefined && e.id !== wanted) continue;
      for (const s of e.chain) {
        if (clearOf(s, here, ON_PAPER)) continue;
        const near = nearestOnSegment(s, p);
        if (near.distance > ON_PAPER) continue;
        const ends = [e.chain[0]!.a, e.chain[e.chain.length - 1]!.d];
        const from = ends.find((q) => distance(q, p) <= ON_PAPER) ?? near.point;
        if (e.id === wanted) return { part, from };
        found ??= { part, from };
      }
    }
  }
  return found;
}

/** The sheet that has p on an edge (the edge `wanted` first), or undefined. */
export const sheetAt = (piece: Piece, p: Point, wanted: string | undefined): Part | undefined =>
  beginning(piece, p, wanted)?.part;

/** The tips of the darts whose legs are on a sheet, with the dart. */
export function tipsOn(piece: Piece, part: Part): readonly { readonly dart: Dart; readonly tip: Point }[] {
  const tips: { dart: Dart; tip: Point }[] = [];
  for (const e of part.edges) {
    if (e.role !== 'dart-leg' || e.dart === undefined) continue;
    const dart = findDart(piece, e.dart);
    if (dart === undefined) continue;
    tips.push({ dart, tip: legIds(dart)[0] === e.id ? e.chain[e.chain.length - 1]!.d : e.chain[0]!.a });
  }
  return tips;
}

/** The tip of a dart on that sheet that lies within `reach` mm of p. */
function tipNear(piece: Piece, part: Part, p: Point, reach: number): Point | undefined {
  return tipsOn(piece, part).find(({ tip }) => distance(tip, p) <= reach)?.tip;
}

/** What lies in the way of the line on its sheet, or undefined. */
function obstacleOf(
  piece: Piece,
  part: Part,
  chain: Chain,
): { readonly code: 'slash-meets-dart' | 'slash-leaves-piece'; readonly dart?: string } | undefined {
  const start = chain[0]!.a;
  const end = chain[chain.length - 1]!.d;
  const atTip = tipNear(piece, part, end, 0) !== undefined;
  const touches = (s: Segment, own: Segment): Point[] =>
    intersectSegments(own, s)
      .map((m) => m.point)
      .filter((p) => !(atTip && distance(p, end) <= AT_END));
  for (const own of chain) {
    const box = hullBox(own);
    for (const e of part.edges) {
      for (const s of e.chain) {
        if (clearOf(s, box, AT_END)) continue;
        const met = touches(s, own);
        if (e.role === 'dart-leg') {
          if (met.length > 0)
            return { code: 'slash-meets-dart', ...(e.dart !== undefined && { dart: e.dart }) };
        } else if (met.some((p) => distance(p, start) > AT_END)) return { code: 'slash-leaves-piece' };
      }
    }
  }
  const outline = chainOf(part.edges);
  const inside = chain.every((s) => contains(outline, pointAt(s, 0.5)) === 'inside');
  if (!inside || (!atTip && contains(outline, end) !== 'inside')) return { code: 'slash-leaves-piece' };
  return undefined;
}
