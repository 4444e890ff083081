import type { Point } from '../geometry/types.ts';
import type { Edge, EdgeRole } from './types.ts';
import { add, scale, sub, unit } from '../geometry/point.ts';
import { edge } from './draft-shapes.ts';
import { startAt } from './outline.ts';

/** What an edge of the draft is called once a dart was moved; `after` names the edge that it continues, in one edge with it. */
export interface Rejoined {
  readonly id: string;
  readonly role: EdgeRole;
  readonly partner?: string;
  readonly after?: string;
}

/**
 * The outline of the right half front from centre front on, its edges renamed by the table; an edge marked `joined` has gone into
 * the one that names it in `after`. What the table does not name stays as it is.
 */
export function rejoin(
  outline: readonly Edge[],
  names: Readonly<Record<string, Rejoined | 'joined'>>,
): readonly Edge[] {
  const first = outline.findIndex((e) => e.id === 'centre-front');
  const out: Edge[] = [];
  for (let k = 0; k < outline.length; k++) {
    const e = outline[(first + k) % outline.length]!;
    const to = names[e.id];
    if (to === 'joined') continue;
    if (to === undefined) {
      out.push(e);
      continue;
    }
    const before = to.after === undefined ? undefined : outline.find((o) => o.id === to.after)!.chain;
    const chain = before ? [...before, ...startAt(e.chain, before[before.length - 1]!.d)] : e.chain;
    out.push(edge(to.id, to.role, 'right', chain, to.partner));
  }
  return out;
}

/** The sewn point of a dart: on the middle between its legs, `backOff` mm from the bust point. */
export function sewnPoint(bust: Point, oneEnd: Point, otherEnd: Point, backOff: number): Point {
  const middle = unit(add(unit(sub(oneEnd, bust)), unit(sub(otherEnd, bust))));
  return add(bust, scale(middle, backOff));
}
