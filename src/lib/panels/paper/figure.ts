import { chainEnd, chainLength, chainStart, pointAtLength } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import type { Measurable } from '../../grading/paper-items.ts';
import { measuredConnector } from '../../pattern/connector-measure.ts';
import { openings } from '../../pattern/openings.ts';
import { findDart, legsOf, outlineOf, partOf, seamGroups } from '../../pattern/outline.ts';
import type { Piece } from '../../pattern/types.ts';
import { boundsOf, pathData } from '../../print/half-scale.ts';
import { spread } from './spread.ts';

/** Where one item is measured: what is drawn, and where its number stands, mm at full size. */
export interface PaperMark {
  readonly d: string;
  readonly at: Point;
  /** A line from the number to its place, where it stands off. */
  readonly lead?: string;
}

/** The drawing of a piece that shows where to measure. */
export interface PaperDrawing {
  readonly outline: string;
  readonly viewBox: string;
  /** Radius of the ring round a number, mm. */
  readonly ring: number;
  readonly marks: readonly (PaperMark | undefined)[];
}

/** A number in the drawing is as high as this part of the piece, and needs as much room round it. */
const NUMBER = 1 / 20;

const same = (p: Point): Point => p;
const mix = (a: Point, b: Point, part: number): Point => ({
  x: a.x + (b.x - a.x) * part,
  y: a.y + (b.y - a.y) * part,
});
const straight = (a: Point, b: Point): string => `M${a.x} ${a.y}L${b.x} ${b.y}`;

function dartMark(piece: Piece, { what, about }: Measurable): PaperMark | undefined {
  const dart = findDart(piece, about);
  const legs = dart && legsOf(piece, dart);
  const bust = legs && partOf(piece, legs.into.id)?.landmarks[dart.bustPoint];
  if (!bust) return undefined;
  const from = chainStart(legs.into.chain);
  const to = chainEnd(legs.outOf.chain);
  if (what === 'intake') return { d: straight(from, to), at: mix(from, to, 0.5) };
  if (what === 'leg-length') return { d: straight(bust, from), at: mix(bust, from, 0.62) };
  const [p, q] = [mix(bust, from, 0.3), mix(bust, to, 0.3)];
  const r = distance(bust, p);
  const turn = (p.x - bust.x) * (q.y - bust.y) - (p.y - bust.y) * (q.x - bust.x);
  const arc = `M${p.x} ${p.y}A${r} ${r} 0 0 ${turn > 0 ? 1 : 0} ${q.x} ${q.y}`;
  return { d: arc, at: mix(mix(p, q, 0.5), bust, 1.6) };
}

/** The connector, or the angle at its foot. */
function connectorMark(piece: Piece, { what, about }: Measurable): PaperMark | undefined {
  const drawn = measuredConnector(piece, about);
  if (!drawn) return undefined;
  const { tip, foot, along, length, angle } = drawn;
  if (what === 'connector-length') return { d: straight(tip, foot), at: mix(tip, foot, 0.35) };
  // On the side of the smaller angle.
  const way = (tip.x - foot.x) * along.x + (tip.y - foot.y) * along.y < 0 ? -1 : 1;
  const r = length * 0.45;
  const p = { x: foot.x + way * r * along.x, y: foot.y + way * r * along.y };
  const q = mix(foot, tip, r / length);
  const turn = (p.x - foot.x) * (q.y - foot.y) - (p.y - foot.y) * (q.x - foot.x);
  const middle = mix(p, q, 0.5);
  return {
    d: `M${p.x} ${p.y}A${r} ${r} 0 0 ${turn > 0 ? 1 : 0} ${q.x} ${q.y}`,
    at: angle > 0 ? mix(foot, middle, 2.4) : middle,
  };
}

/** Whether an item is measured from the bust point past a leg that bends on its way, at an alternate pivot. */
export function bent(piece: Piece, { what, about }: Measurable): boolean {
  if (what !== 'dart-angle' && what !== 'leg-length') return false;
  const dart = findDart(piece, about);
  const legs = dart && legsOf(piece, dart);
  return legs !== undefined && (legs.into.chain.length > 1 || legs.outOf.chain.length > 1);
}

function markOf(piece: Piece, item: Measurable): PaperMark | undefined {
  const { what, about } = item;
  if (what === 'opening') {
    const found = openings(piece).find(({ dart }) => dart === about);
    return found && { d: straight(found.foot, found.farFoot), at: mix(found.foot, found.farFoot, 0.5) };
  }
  if (what === 'seam-length' || what === 'allowance-width') {
    const edges = seamGroups(piece)
      .filter(({ id }) => id === about)
      .flatMap((group) => group.edges)
      .filter(({ role }) => role !== 'cap');
    const chains = edges.map(({ chain }) => chain);
    const longest = chains.toSorted((a, b) => chainLength(b) - chainLength(a))[0];
    if (!longest) return undefined;
    return {
      d: chains.map((chain) => pathData(chain, same, false)).join(''),
      at: pointAtLength(longest, chainLength(longest) / 2),
    };
  }
  return (what === 'connector-length' || what === 'connector-angle' ? connectorMark : dartMark)(piece, item);
}

/** A piece with the places at which its items are measured. */
export function drawingOf(piece: Piece, items: readonly Measurable[]): PaperDrawing {
  const chains = outlineOf(piece).map(({ chain }) => chain);
  // A connector is measured to the line that it meets.
  const styleLines = items.some(({ what }) => what === 'connector-angle')
    ? piece.parts.flatMap(({ lines }) => lines.flatMap((l) => (l.kind === 'style-line' ? [l.chain] : [])))
    : [];
  const box = boundsOf(chains);
  const ring = NUMBER * Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const places = items.map((item) => markOf(piece, item));
  // A connector is hardly longer than a number is wide.
  const bare = items.flatMap(({ what, about }) => {
    const drawn = what === 'connector-length' ? measuredConnector(piece, about) : undefined;
    return drawn ? [drawn.tip, drawn.foot] : [];
  });
  const numbers = spread(
    places.map((mark) => mark?.at),
    ring,
    box,
    bare,
  );
  const size = [box.maxX - box.minX, box.maxY - box.minY].map((side) => side + 3 * ring);
  return {
    outline: [...chains, ...styleLines].map((chain) => pathData(chain, same, false)).join(''),
    viewBox: [box.minX - 1.5 * ring, box.minY - 1.5 * ring, ...size].map((n) => n.toFixed(1)).join(' '),
    ring,
    marks: places.map((mark, i) => {
      const { at, lead } = numbers[i] ?? {};
      return mark && at && { d: mark.d, at, ...(lead && { lead: straight(...lead) }) };
    }),
  };
}
