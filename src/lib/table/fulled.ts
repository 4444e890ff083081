import { pointAtLength, tangentAtLength } from '../geometry/chain.ts';
import type { Chain } from '../geometry/types.ts';
import { edgeLength } from '../pattern/edge-length.ts';
import type { Piece } from '../pattern/types.ts';
import type { Drawn } from './model.ts';

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
