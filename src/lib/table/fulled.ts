import { chainEnd, chainLength, chainStart, pointAtLength, tangentAtLength } from '../geometry/chain.ts';
import { subchain } from '../geometry/subchain.ts';
import { intersectChains } from '../geometry/intersect.ts';
import { distance } from '../geometry/point.ts';
import type { Chain } from '../geometry/types.ts';
import { edgeLength } from '../pattern/edge-length.ts';
import type { Part, Piece } from '../pattern/types.ts';
import { partModel, type Drawn, type PartModel } from './model.ts';
import { pathOf } from './paths.ts';

/** How far inside the edge gathers and ease are marked, and how far the wave swings, mm. */
const INSIDE = 9;
const SWING = 3.2;
const WAVE = 9;

/** Edges that take a dart's fullness up: a wave beside what is gathered, dots beside what is eased. Tucks are seen by their folds. */
export function fulled(piece: Piece): readonly Drawn[] {
  return (piece.fullness ?? []).flatMap((f): Drawn[] => {
    const edge = piece.seam?.find((e) => e.id === f.edge);
    if (!edge || f.as === 'tucks') return [];
    const swing = f.as === 'gathers' ? SWING : 0;
    return [
      {
        key: `fulled ${f.dart}`,
        stroke: f.as === 'gathers' ? 'gathered' : 'eased',
        d: wave(edge.chain, edgeLength(edge), swing),
      },
    ];
  });
}

function wave(chain: Chain, length: number, swing: number): string {
  const halves = Math.max(4, 2 * Math.round(length / WAVE));
  let d = '';
  for (let i = 0; i <= halves; i++) {
    const at = (length * i) / halves;
    const p = pointAtLength(chain, at);
    const t = tangentAtLength(chain, at);
    const side = INSIDE + (i % 2 === 0 ? swing : -swing);
    // The paper lies on the right hand of the outline.
    d += `${d === '' ? 'M' : 'L'}${(p.x - t.y * side).toFixed(2)} ${(p.y + t.x * side).toFixed(2)}`;
  }
  return d;
}

/**
 * A sheet below the new edge: the old cut lines of what was drawn over are only seen through, and no further than the paper
 * now goes.
 */
export function seenThrough({ fullness, seam }: Piece, part: Part): PartModel {
  const model = partModel(part);
  const strokes = model.strokes.map((stroke): Drawn => {
    const edge = part.edges.find(({ id, role }) => id === stroke.key && role === 'dart-leg');
    const over = edge && fullness?.find(({ darts }) => edge.dart !== undefined && darts.includes(edge.dart));
    const arch = over && seam?.find(({ id }) => id === over.edge);
    return edge && arch ? { ...stroke, stroke: 'ghost', d: pathOf(within(edge.chain, arch.chain)) } : stroke;
  });
  return { ...model, strokes };
}

/** What of a leg lies on its point's side of the new edge. */
function within(leg: Chain, arch: Chain): Chain {
  const whole = chainLength(leg);
  const from = chainStart(arch);
  const inwards = distance(chainStart(leg), from) < distance(chainEnd(leg), from);
  // mm from the leg's point.
  const places = intersectChains(leg, arch).map(({ a }) => (inwards ? whole - a.length : a.length));
  const kept = Math.min(...places.filter((mm) => mm > 1), whole);
  return inwards ? subchain(leg, whole - kept, whole) : subchain(leg, 0, kept);
}
