import type { Chain, Point } from '../geometry/types.ts';

/** Hundredths of a millimetre: finer than any screen shows. Rounded here, at output, and nowhere before. */
const round = (value: number): number => Math.round(value * 100) / 100;
export const xy = (p: Point): string => `${round(p.x)} ${round(p.y)}`;

const drawn = new WeakMap<Chain, string>();

/** The `d` of an SVG path along a chain, mm. Chains never change, so each is written once. */
export function pathOf(chain: Chain): string {
  let d = drawn.get(chain);
  if (d === undefined) {
    d = chain.length === 0 ? '' : `M${xy(chain[0]!.a)}`;
    for (const s of chain) d += s.kind === 'line' ? `L${xy(s.d)}` : `C${xy(s.b)} ${xy(s.c)} ${xy(s.d)}`;
    drawn.set(chain, d);
  }
  return d;
}

/** One closed path round edges that run end to end. */
export const closedPath = (chains: readonly Chain[]): string => pathOf(chains.flat()) + 'Z';

export const segmentPath = (from: Point, to: Point): string => `M${xy(from)}L${xy(to)}`;

/** A dimension line with a tick square to it at each end, px. */
export function tickPath(from: Point, to: Point, tick = 5): string {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(dx * dx + dy * dy) || 1;
  const [nx, ny] = [(-dy / length) * tick, (dx / length) * tick];
  const mark = (p: Point): string => segmentPath({ x: p.x - nx, y: p.y - ny }, { x: p.x + nx, y: p.y + ny });
  return segmentPath(from, to) + mark(from) + mark(to);
}
