import type { Chain, Point } from '../geometry/types.ts';
import type { InnerLine, LineFault, Part, Piece } from './types.ts';
import { distance } from '../geometry/point.ts';
import { hullBox, pointAt } from '../geometry/segment.ts';
import { nearestOnChain, nearestOnSegment } from '../geometry/nearest.ts';
import { chainEnd, chainLength, chainStart } from '../geometry/chain.ts';
import { contains } from '../geometry/inside.ts';
import { intersectSegments } from '../geometry/meet.ts';
import { selfIntersections } from '../geometry/self-meeting.ts';
import { clearOf } from './clear.ts';
import { chainOf, endAt, startAt } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { withLines, withParts } from './with.ts';

/** Ends within this distance (mm) of the outline are put onto it; it covers the rounding of an anchored point, not a near miss. */
const ON_OUTLINE = 1e-4;
/** Crossings this near (mm) to an end of the line are the end itself. */
const AT_END = 1e-3;
/** No more faults of a line than anybody looks at; the line of a hostile file has thousands. */
const MOST_FAULTS = 24;

/**
 * Draws (or draws again) the line `lineId` on the piece. A line that stops short, leaves the piece, crosses itself or meets a dart is
 * drawn all the same, with its faults noted on it; it cannot be cut. Drawing again drops the notches and connectors of the
 * old line. Refusals: `line-without-length`, `line-already-cut`, `line-off-piece` when not a point of it is on the piece.
 */
export function addLine(piece: Piece, lineId: string, drawn: Chain): Outcome<Piece> {
  if (drawn.length === 0 || !drawn.every(isFinite)) return refuse('line-without-length', { line: lineId });
  const length = chainLength(drawn);
  if (!(length > 1)) return refuse('line-without-length', { line: lineId });
  if (isCut(piece, lineId)) return refuse('line-already-cut', { line: lineId });

  const middle = pointAt(drawn[Math.floor(drawn.length / 2)]!, 0.5);
  const home =
    piece.parts.length === 1
      ? piece.parts[0]!
      : piece.parts.find((p) => contains(chainOf(p.edges), middle) !== 'outside');
  if (home === undefined) return refuse('line-off-piece', { line: lineId });

  let chain = drawn;
  const start = onOutline(home, chainStart(chain));
  const end = onOutline(home, chainEnd(chain));
  if (start !== undefined) chain = startAt(chain, start);
  if (end !== undefined) chain = endAt(chain, end);
  const line: InnerLine = {
    id: lineId,
    kind: 'style-line',
    chain,
    origin: { edge: lineId, from: 0, to: length },
    dart: undefined,
    notches: [],
    line: undefined,
    foot: undefined,
    faults: lineFaults(home, chain, start !== undefined, end !== undefined),
  };
  const parts = piece.parts.map((p) => {
    const lines = p.lines.filter((l) => l.id !== lineId && l.line !== lineId);
    if (p === home) lines.push(line);
    else if (lines.length === p.lines.length) return p;
    return withLines(p, lines);
  });
  return done(withParts(piece, parts));
}

const isFinite = (s: Chain[number]): boolean => {
  const b = hullBox(s);
  return Number.isFinite(b.minX + b.minY + b.maxX + b.maxY);
};

/** Whether a line of that id was cut, in whole or in part. */
export function isCut(piece: Piece, lineId: string): boolean {
  for (const part of piece.parts)
    for (const e of part.edges) if (e.role === 'style-line' && e.origin.edge === lineId) return true;
  return false;
}

/** The outline's own point at p, or undefined when p is not on the outline. */
function onOutline(part: Part, p: Point): Point | undefined {
  const here = { minX: p.x, minY: p.y, maxX: p.x, maxY: p.y };
  for (const e of part.edges) {
    for (const s of e.chain) {
      if (clearOf(s, here, ON_OUTLINE)) continue;
      const near = nearestOnSegment(s, p);
      if (near.distance <= ON_OUTLINE) return near.point;
    }
  }
  return undefined;
}

/** What keeps the chain, drawn on the part, from being cut from end to end; empty when nothing does. */
function lineFaults(part: Part, chain: Chain, startsOn: boolean, endsOn: boolean): readonly LineFault[] {
  const faults: LineFault[] = [];
  for (const end of ['start', 'end'] as const) {
    if (end === 'start' ? startsOn : endsOn) continue;
    const at = end === 'start' ? chainStart(chain) : chainEnd(chain);
    const outline = chainOf(part.edges);
    const outside = contains(outline, at) === 'outside';
    const mm = nearestOnChain(outline, at).distance;
    faults.push({ code: outside ? 'line-leaves-piece' : 'line-stops-short', at, end, mm });
  }
  const a = chainStart(chain);
  const d = chainEnd(chain);
  const boxes = chain.map(hullBox);
  for (const e of part.edges) {
    for (const s of e.chain) {
      for (let k = 0; k < chain.length; k++) {
        if (clearOf(s, boxes[k]!, AT_END)) continue;
        for (const { point } of intersectSegments(chain[k]!, s)) {
          const atEnd = distance(point, a) <= AT_END || distance(point, d) <= AT_END;
          if (e.role === 'dart-leg') {
            if (!faults.some((f) => f.dart === e.dart))
              faults.push({
                code: 'line-meets-dart',
                at: point,
                ...(e.dart !== undefined && { dart: e.dart }),
              });
          } else if (
            !atEnd &&
            faults.length < MOST_FAULTS &&
            !faults.some((f) => distance(f.at, point) <= AT_END)
          ) {
            faults.push({ code: 'line-leaves-piece', at: point });
          }
        }
      }
    }
  }
  if (faults.length === 0) {
    const middle = pointAt(chain[Math.floor(chain.length / 2)]!, 0.5);
    if (contains(chainOf(part.edges), middle) !== 'inside')
      faults.push({ code: 'line-leaves-piece', at: middle });
  }
  for (const own of selfIntersections(chain, MOST_FAULTS))
    faults.push({ code: 'line-crosses-itself', at: own.point });
  return faults;
}

/** The inner line of that id (the first stretch, when it is partly cut) and the part that it is drawn on. */
export function findLine(
  piece: Pick<Piece, 'parts'>,
  id: string,
): { readonly part: Part; readonly line: InnerLine } | undefined {
  for (const part of piece.parts) for (const line of part.lines) if (line.id === id) return { part, line };
  return undefined;
}
