import { pointAtLength } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import type { Point } from '../../geometry/types.ts';
import { findEdge, groupOf, seamGroups } from '../../pattern/outline.ts';
import { notchAlong, placeOnSeam, styleSeam, type StyleSeam } from '../../pattern/style-seam.ts';
import type { EdgeNotch, Piece } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';
import { isWhole, middleOf, type Scene } from '../scene.ts';
import type { ToolTarget } from '../tool-spec.ts';

/** Where a notch stands on its piece, mm. */
export function notchPoint(piece: Piece, notch: EdgeNotch): Point | undefined {
  const edge = findEdge(piece, notch.edge);
  return edge && pointAtLength(edge.chain, notch.at);
}

/** The point `along` mm from the start of a piece's style seam, in the direction of the line. */
export function seamPoint(piece: Piece, seam: StyleSeam, along: number): Point | undefined {
  const place = placeOnSeam(seam, along);
  const edge = place && findEdge(piece, place.edge);
  return place && edge && pointAtLength(edge.chain, place.at);
}

/** mm along the style seam of the place nearest to a point. */
export function nearestAlong(seam: StyleSeam, point: Point): number {
  let best = 0;
  let least = Infinity;
  for (const { edge, from, length } of seam.stretches) {
    if (!edge) continue;
    const near = nearestOnChain(edge.chain, point);
    if (near.distance >= least) continue;
    least = near.distance;
    best = from + (seam.bank === 'a' ? length - near.length : near.length);
  }
  return best;
}

/** The notches of a piece's style seam as targets, in the direction of the line. */
export function seamNotches(piece: Piece, how: ToolTarget['how'], ghosts = false): readonly ToolTarget[] {
  const seam = styleSeam(piece);
  if (!seam) return [];
  return piece.notches
    .filter((notch) => ghosts || notch.ghost !== true)
    .flatMap((notch): ToolTarget[] => {
      const point = notchPoint(piece, notch);
      const at = notchAlong(seam, notch);
      if (!point || at === undefined) return [];
      return [
        {
          id: `notch:${piece.id}:${notch.id}`,
          kind: 'notch',
          point,
          piece: piece.id,
          how,
          ref: notch.id,
          at,
        },
      ];
    })
    .sort((a, b) => a.at! - b.at!);
}

/** The seam groups of a piece as targets, each at the middle of its longest edge. */
export function groupTargets(piece: Piece, done: (group: string) => boolean): readonly ToolTarget[] {
  // A group that an open dart divides comes twice; it is one thing to choose.
  const groups = seamGroups(piece).filter(
    (group, i, all) => all.findIndex((one) => one.id === group.id) === i,
  );
  return groups.map((group) => {
    const edge = [...group.edges].sort((a, b) => b.chain.length - a.chain.length)[0]!;
    return {
      id: `group:${piece.id}:${group.id}`,
      kind: 'seam',
      point: middleOf(edge.chain),
      piece: piece.id,
      how: 'tap',
      ref: group.id,
      done: done(group.id),
    };
  });
}

/** The seam group of a piece that a point is nearest to, within `reach` mm. */
export function groupAt(piece: Piece, point: Point, reach: number): string | undefined {
  let best: string | undefined;
  let least = reach;
  for (const group of seamGroups(piece))
    for (const edge of group.edges) {
      const d = nearestOnChain(edge.chain, point).distance;
      if (d < least) [least, best] = [d, groupOf(edge)];
    }
  return best;
}

/** Of ids of darts, edges or seams those that lie on the table: a half front has no left side. */
export const thereOf = <T extends string>(ids: readonly T[], { opened }: Work): readonly T[] =>
  ids.filter((id) => !/^left(\/|$)/.test(id) || (opened !== undefined && isWhole(opened)));

/** `piece` and the rest of a target id `kind:piece:rest`; neither holds a colon. */
export function pieceAnd(target: string): { piece: string; rest: string } {
  const [, piece = '', rest = ''] = target.split(':');
  return { piece, rest };
}

/** The fabric of the copies, for commands that go by fabric instead of by piece; none where there is no copy. */
export const asFabric = (scene: Scene): { as?: Scene['fabric'] } =>
  scene.work.pieces.some((piece) => piece.id.endsWith(`@${scene.fabric}`)) ? { as: scene.fabric } : {};
