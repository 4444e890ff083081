import { pointAtLength } from '../geometry/chain.ts';
import { contains } from '../geometry/outline.ts';
import { line } from '../geometry/segment.ts';
import type { Chain, Point } from '../geometry/types.ts';
import { chainOf, outlineOf } from '../pattern/outline.ts';
import type { Piece } from '../pattern/types.ts';

/** How far inside the chord between its notches the words for an eased stretch stand, mm full size. */
const INSIDE = 26;

export interface EasedStretch {
  /** What is done with it. */
  readonly how: 'ease in' | 'gather in' | 'tuck in';
  /** How much longer it is cut than sewn, mm full size. */
  readonly amount: number;
  /** Middle of the words. */
  readonly at: Point;
  /** From notch to notch, a little inside the seam: what a caption keeps clear of. */
  readonly clear: Chain;
}

/** The stretches of a piece that are marked to be eased, gathered or tucked in, each between its two notches. */
export function easedStretches(piece: Piece): EasedStretch[] {
  const outline = outlineOf(piece);
  const notchAt = (id: string): Point | undefined => {
    const notch = piece.notches.find((n) => n.id === id && !n.ghost);
    const edge = notch && outline.find((e) => e.id === notch.edge);
    return edge && pointAtLength(edge.chain, notch.at);
  };
  const between = (how: EasedStretch['how'], from: string, to: string, amount: number): EasedStretch[] => {
    const [p, q] = [notchAt(from), notchAt(to)];
    if (!p || !q) return [];
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    const length = Math.sqrt(dx * dx + dy * dy);
    if (length === 0) return [];
    const aside = (way: number) => {
      const [x, y] = [(way * -dy * INSIDE) / length, (way * dx * INSIDE) / length];
      return { at: { x: (p.x + q.x) / 2 + x, y: (p.y + q.y) / 2 + y }, x, y };
    };
    const { at, x, y } = contains(chainOf(outline), aside(1).at) === 'inside' ? aside(1) : aside(-1);
    const clear = [line({ x: p.x + x, y: p.y + y }, { x: q.x + x, y: q.y + y })];
    return [{ how, amount, at, clear }];
  };
  return [
    ...piece.treatments.flatMap(({ kind, eased, excess }) =>
      kind === 'eased' && eased ? between('ease in', eased.from, eased.to, excess) : [],
    ),
    ...(piece.fullness ?? []).flatMap(({ dart, as, fullness }) =>
      between(HOW[as], `${dart}-gather-1`, `${dart}-gather-2`, fullness),
    ),
  ];
}

const HOW = { ease: 'ease in', gathers: 'gather in', tucks: 'tuck in' } as const;
