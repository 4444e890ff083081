import type { Point } from '../geometry/types.ts';

export interface Label {
  readonly id: string;
  readonly text: string;
  /** What it belongs to, px. */
  readonly at: Point;
  readonly tone: 'reading' | 'wrong' | 'right' | 'note' | 'name' | 'soft';
  /** Sits on its point instead of beside it; or right below it, with its middle or an end there. */
  readonly sits?: 'on' | 'middle' | 'start' | 'end';
  /** The dimension line that it belongs to, px: the label had better not lie on it. */
  readonly line?: readonly [Point, Point];
}

export interface PlacedLabel extends Label {
  /** Upper left corner and size, px. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const LETTER = 7.1;
const HEIGHT = 20;
const PAD = 6;
/** What a hidden pixel of another label counts, against one for each next best place. */
const HIDES = 30;

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const overlap = (a: Rect, b: Rect): number =>
  Math.max(0, Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y));

/** Right, left, above, below and the four corners, nearer places first. */
const WAYS = [10, 26, 46].flatMap((d) =>
  [
    [1, 0],
    [-1, 0],
    [0, -1],
    [0, 1],
    [1, -1],
    [-1, -1],
    [1, 1],
    [-1, 1],
  ].map(([x, y]) => ({ x: x! * d, y: y! * d })),
);

const BESIDE = [
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
].map(([x, y]) => ({ x: x! * 5, y: y! * 5 }));

/** How much of its own dimension line a label hides, px. */
function covered(rect: Rect, { line }: Label): number {
  if (!line) return 0;
  const [a, b] = line;
  let inside = 0;
  for (let i = 0; i <= 8; i++) {
    const [x, y] = [a.x + ((b.x - a.x) * i) / 8, a.y + ((b.y - a.y) * i) / 8];
    if (x > rect.x - 2 && x < rect.x + rect.width + 2 && y > rect.y && y < rect.y + rect.height) inside++;
  }
  return (inside * (Math.abs(b.x - a.x) + Math.abs(b.y - a.y))) / 9;
}

function candidates({ at: exact, sits, tone }: Label, size: { width: number; height: number }): Rect[] {
  const at = { x: Math.round(exact.x), y: Math.round(exact.y) };
  if (sits !== undefined && sits !== 'on') {
    const x =
      at.x - (sits === 'middle' ? Math.round(size.width / 2) : sits === 'end' ? size.width - PAD : PAD);
    return [6, 26].map((down) => ({ x, y: at.y + down, ...size }));
  }
  // What only helps stands right beside its point or nowhere; lines mostly run across.
  const ways = tone === 'soft' ? BESIDE : WAYS;
  return (sits === 'on' ? [{ x: 0, y: 0 }, ...ways] : ways).map((way) => ({
    x: at.x + way.x + (way.x > 0 ? 0 : way.x < 0 ? -size.width : -Math.round(size.width / 2)),
    y: at.y + way.y + (way.y > 0 ? 0 : way.y < 0 ? -size.height : -size.height / 2),
    ...size,
  }));
}

/**
 * Puts each label beside its point where it covers least of the labels before it and of `points` (handles), and stays in the
 * window. Earlier labels matter more. px.
 */
export function placeLabels(
  labels: readonly Label[],
  points: readonly Point[],
  width: number,
  height: number,
): PlacedLabel[] {
  const taken: Rect[] = points.map((p) => ({ x: p.x - 9, y: p.y - 9, width: 18, height: 18 }));
  return labels.flatMap((label): PlacedLabel[] => {
    const size = { width: Math.ceil(label.text.length * LETTER) + 2 * PAD, height: HEIGHT };
    let best: Rect | undefined;
    let least = Infinity;
    const inside = (x: number): number => (label.sits ? x : Math.max(4, Math.min(x, width - 4 - size.width)));
    for (const [i, spot] of candidates(label, size).entries()) {
      const rect = { ...spot, x: inside(spot.x) };
      const outside =
        size.width * size.height - overlap(rect, { x: 4, y: 4, width: width - 8, height: height - 8 });
      const hidden = taken.reduce((sum, other) => sum + overlap(rect, other), 0);
      // No place is so much nicer than another that it may cost a pixel of a neighbour.
      const cost = HIDES * hidden + 3 * outside + i + covered(rect, label);
      if (cost < least) [least, best] = [cost, rect];
    }
    // What only helps is left out where there is no room for it.
    if (!best || (label.tone === 'soft' && least > 40 * HIDES)) return [];
    taken.push(best);
    return [{ ...label, ...best }];
  });
}
