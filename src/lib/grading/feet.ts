import { footOnChain, type Foot } from '../geometry/nearest.ts';
import type { Chain, Point } from '../geometry/types.ts';

// The distance from the bust points, the notches beside them and the connectors are all marked from the same few feet: those on the
// last line are kept.
let last: Chain | undefined;
let feet: { readonly x: number; readonly y: number; readonly foot: Foot }[] = [];

/** The place on a drawn line nearest to a point, with its distance in mm. Throws RangeError for a line of no segments. */
export function footOnLine(line: Chain, { x, y }: Point): Foot {
  if (line !== last) {
    last = line;
    feet = [];
  }
  for (const known of feet) if (known.x === x && known.y === y) return known.foot;
  const foot = footOnChain(line, { x, y });
  feet.push({ x, y, foot });
  return foot;
}
