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
  /** A line leads from it to its point where it stands off. */
  readonly leads?: true;
}

export interface PlacedLabel extends Label {
  /** Upper left corner and size, px. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** The line to its point, as a path from the upper left corner. */
  readonly lead?: string | undefined;
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

/** Nearer to its point than this a label stands at it, px. */
const AT_IT = 14;

/** The shortest line from a label to its point; undefined where it stands at it. */
function leadOf({ x, y, width, height }: Rect, at: Point): string | undefined {
  const [dx, dy] = [at.x - x, at.y - y];
  const [nx, ny] = [Math.max(0, Math.min(dx, width)), Math.max(0, Math.min(dy, height))];
  return Math.abs(dx - nx) + Math.abs(dy - ny) < AT_IT ? undefined : `M${nx} ${ny}L${dx} ${dy}`;
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

/** Right below, one line further down, or right above: on the piece that it names. */
const BELOW = [6, 26, -24].map((y) => ({ x: 0, y }));

/** How much of a line a label hides, px. */
function covered(rect: Rect, [a, b]: readonly [Point, Point]): number {
  let inside = 0;
  for (let i = 0; i <= 8; i++) {
    const [x, y] = [a.x + ((b.x - a.x) * i) / 8, a.y + ((b.y - a.y) * i) / 8];
    if (x > rect.x - 2 && x < rect.x + rect.width + 2 && y > rect.y && y < rect.y + rect.height) inside++;
  }
  return (inside * (Math.abs(b.x - a.x) + Math.abs(b.y - a.y))) / 9;
}

/** The ways from its point to where a label may stand, the best first. */
function waysOf({ sits, tone }: Label): readonly Point[] {
  if (sits !== undefined && sits !== 'on') return tone === 'soft' ? BELOW.slice(0, 2) : BELOW;
  // What only helps stands right beside its point or nowhere; lines mostly run across.
  const ways = tone === 'soft' ? BESIDE : WAYS;
  return sits === 'on' ? [{ x: 0, y: 0 }, ...ways] : ways;
}

function rectAt({ at, sits }: Label, way: Point, width: number): Rect {
  const [x, y] = [Math.round(at.x) + way.x, Math.round(at.y) + way.y];
  const half = Math.round(width / 2);
  if (sits !== undefined && sits !== 'on')
    return {
      x: x - (sits === 'middle' ? half : sits === 'end' ? width - PAD : PAD),
      y,
      width,
      height: HEIGHT,
    };
  const left = way.x > 0 ? 0 : way.x < 0 ? width : half;
  const up = way.y > 0 ? 0 : way.y < 0 ? HEIGHT : HEIGHT / 2;
  return { x: x - left, y: y - up, width, height: HEIGHT };
}

/**
 * Puts each label beside its point where it covers least of the labels before it, of `points` (handles), and of what is measured: all
 * dimension lines, `legs` (of darts) and `marks` (bust points, notches); and stays in the window. Earlier labels matter more. px.
 */
export function placeLabels(
  labels: readonly Label[],
  points: readonly Point[],
  width: number,
  height: number,
  legs: readonly (readonly [Point, Point])[] = [],
  marks: readonly Point[] = [],
): PlacedLabel[] {
  const round = (r: number) => (p: Point) => ({ x: p.x - r, y: p.y - r, width: 2 * r, height: 2 * r });
  const taken: Rect[] = [
    ...points.map(round(9)),
    ...marks.map(round(4)),
    // The ruler, and the buttons that zoom.
    { x: 0, y: height - 36, width: 230, height: 36 },
    { x: width - 155, y: height - 56, width: 155, height: 56 },
  ];
  const lines = [...labels.flatMap(({ line }) => (line ? [line] : [])), ...legs];
  return labels.flatMap((label): PlacedLabel[] => {
    const size = { width: Math.ceil(label.text.length * LETTER) + 2 * PAD, height: HEIGHT };
    let best: Rect | undefined;
    let least = Infinity;
    // What only helps goes out of sight with its point.
    const goes = label.sits ?? (label.tone === 'soft' && (label.at.x < 0 || label.at.x > width));
    const inside = (x: number): number => (goes ? x : Math.max(4, Math.min(x, width - 4 - size.width)));
    for (const [i, way] of waysOf(label).entries()) {
      // Every place costs its number at the least.
      if (i >= least) break;
      const spot = rectAt(label, way, size.width);
      const rect = { ...spot, x: inside(spot.x) };
      const outside =
        size.width * size.height - overlap(rect, { x: 4, y: 4, width: width - 8, height: height - 8 });
      const hidden = taken.reduce((sum, other) => sum + overlap(rect, other), 0);
      // No place is so much nicer than another that it may cost a pixel of a neighbour.
      const cost =
        HIDES * hidden + 3 * outside + i + lines.reduce((sum, line) => sum + covered(rect, line), 0);
      if (cost < least) [least, best] = [cost, rect];
    }
    // What only helps is left out where there is no room for it.
    if (!best || (label.tone === 'soft' && least > 40 * HIDES)) return [];
    taken.push(best);
    return [{ ...label, ...best, lead: label.leads && leadOf(best, label.at) }];
  });
}
