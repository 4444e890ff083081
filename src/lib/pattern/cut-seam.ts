import { chainLength } from '../geometry/chain.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import type { Chain } from '../geometry/types.ts';
import { cutLine } from './allowance.ts';
import { piecesOf } from './copy.ts';
import { backFor, frontPortions, portionOf, seamName } from './front-back.ts';
import { seamGroups } from './outline.ts';
import { styleSides } from './seam.ts';
import { byPlace, forward, type Seam, type SeamMark, type SeamRun } from './seam-run.ts';
import type { EdgeRole, Piece, Side } from './types.ts';

/**
 * The same seam along the cut lines: what a learner measures who walks the wrong line. Undefined while a piece has no cut line.
 */
export function cutSeamOf(pieces: readonly Piece[], name: string, as?: string): Seam | undefined {
  const set = piecesOf(pieces, as);
  if (name === 'style-line') {
    const sides = styleSides(set);
    if (!sides) return undefined;
    const a = cutRun([{ piece: sides.a.piece, reversed: true, role: 'style-line' }]);
    const b = cutRun([{ piece: sides.b.piece, reversed: false, role: 'style-line' }]);
    return a && b && { a, b };
  }
  const named = seamName(name);
  const back = named && backFor(set, named.side);
  if (!named || !back) return undefined;
  const { side, role } = named;
  const portions = frontPortions(set, role, side).map((p) => ({ ...p, role, side }));
  const own = portionOf(back, role);
  const a = portions.length > 0 ? cutRun(portions) : undefined;
  const b = own && cutRun([{ piece: back, reversed: own.reversed, role }]);
  return a && b && { a, b };
}

function cutRun(
  portions: readonly { piece: Piece; reversed: boolean; role: EdgeRole; side?: Side }[],
): SeamRun | undefined {
  const chains: Chain[] = [];
  const notches: SeamMark[] = [];
  let length = 0;
  for (const { piece, reversed, role, side } of portions) {
    const cut = cutLine(piece);
    if (!cut) return undefined;
    const group = seamGroups(piece).find(
      ({ edges: [e] }) => e!.role === role && (side === undefined || e!.side === side),
    );
    const chain = group && cut.groups[group.id];
    if (!chain || chain.length === 0) return undefined;
    const own = chainLength(chain);
    for (const m of cut.notches) {
      if (!group.edges.some((e) => e.id === m.edge)) continue;
      const at = nearestOnChain(chain, m.to).length;
      notches.push({ id: m.id, at: length + (reversed ? own - at : at) });
    }
    chains.push(forward(chain, reversed));
    length += own;
  }
  const ids = portions.map((p) => p.piece.id);
  return { chains, pieces: ids, notches: notches.sort(byPlace), joints: [], openings: [], length };
}
