import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/*
 * An outside program: it writes a recipe from the published schema and example alone, runs the command, and measures the JSON with
 * arithmetic of its own. Nothing of the project is imported here. All expectations are derived (trade notes: a turn about
 * the bust point is rigid; e = 2 d sin(θ/2)) but where another mark stands beside them.
 */

type XY = readonly [number, number];
type Bezier = readonly [XY, XY, XY, XY];
interface At {
  readonly x: number;
  readonly y: number;
}
interface Edge {
  readonly id: string;
  readonly role: string;
  readonly side: string;
  readonly partner?: string;
  readonly dart?: string;
  readonly length: number;
  readonly origin: { readonly from: number; readonly to: number };
  readonly segments: readonly { readonly line?: readonly number[]; readonly cubic?: readonly number[] }[];
}
interface Piece {
  readonly id: string;
  readonly outline: readonly Edge[];
  readonly parts: readonly { readonly edges: readonly Edge[]; readonly landmarks: Record<string, At> }[];
  readonly darts: readonly { readonly id: string; readonly state: string; readonly residual: number }[];
  readonly notches: readonly { readonly id: string; readonly edge: string; readonly at: number }[];
  readonly treatments: readonly { readonly dart: string; readonly excess: number }[];
  readonly cutLine?: {
    readonly groups: Record<string, Edge['segments']>;
    readonly notches: readonly { readonly id: string; readonly from: At; readonly to: At }[];
  };
}
interface Document {
  readonly block: { readonly facts: { readonly dartAngle: number } };
  readonly pieces: readonly Piece[];
  readonly lines: readonly { readonly feet: Record<string, { readonly foot: At; readonly tip: At }> }[];
  readonly unfollowed: readonly unknown[];
}

const bust = (side: string, dx?: number, dy?: number) => ({
  landmark: `${side}/bust-point`,
  ...(dx !== undefined && { dx, dy }),
});
const slashAndTurn = (dart: string, from: string) => [
  { do: 'slash', dart, line: 'curve', from, past: 0 },
  { do: 'turn', dart, part: 'freed', about: bust(dart), by: { until: 'legs-meet' } },
];
const points = [
  { on: 'right/shoulder', at: 0.5 },
  bust('right', 14, -6),
  bust('right', 95, 8),
  bust('left', -3, 18),
  { on: 'left/side-lower', at: 0.4 },
];
const NOTCHES = { a1: 0.3, a2: 0.47, b1: 0.63, b2: 0.8 };
const DRAWN = [
  { do: 'open-out', about: 'centre-front' },
  { do: 'draw-line', line: 'curve', points },
  ...Object.entries(NOTCHES).map(([id, at]) => ({ do: 'notch', id, line: 'curve', at })),
  { do: 'extend-dart', dart: 'right', to: bust('right') },
  { do: 'extend-dart', dart: 'left', to: bust('left') },
  { do: 'connect', dart: 'right', line: 'curve', at: 0.39 },
  { do: 'connect', dart: 'left', line: 'curve', at: 0.7 },
];
const FIRST = [...DRAWN, ...slashAndTurn('right', 'start')];
const PARTED = [...FIRST, ...slashAndTurn('left', 'end'), { do: 'separate', line: 'curve' }];
const WIDTHS: Record<string, Record<string, number>> = {
  upper: {
    'style-line': 9.525,
    'right/shoulder': 12.7,
    neckline: 6.35,
    'left/shoulder': 12.7,
    'left/armhole': 6,
    'left/side': 15.875,
  },
  lower: {
    'style-line': 9.525,
    'left/side': 15.875,
    waist: 25,
    'right/side': 15.875,
    'right/armhole': 6,
    'right/shoulder': 12.7,
  },
};
const ALLOWED = [
  ...PARTED,
  { do: 'bridge', piece: 'lower', dart: 'right', before: 20, after: 20 },
  { do: 'ease', piece: 'lower', dart: 'right', from: 'a1', to: 'a2' },
  { do: 'bridge', piece: 'upper', dart: 'left', before: 20, after: 20 },
  { do: 'ease', piece: 'upper', dart: 'left', from: 'b1', to: 'b2' },
  ...Object.entries(WIDTHS).flatMap(([piece, widths]) => [
    ...Object.entries(widths).map(([group, width]) => ({ do: 'allow', piece, group, width })),
    { do: 'carry-notches', piece },
  ]),
];

// The program's own arithmetic.

const away = (p: XY, q: XY): number => Math.hypot(p[0] - q[0], p[1] - q[1]);
const xy = ({ x, y }: At): XY => [x, y];

/** A segment as a cubic, whichever it is. */
function bezier({ line, cubic }: Edge['segments'][number]): Bezier {
  if (cubic) return [0, 2, 4, 6].map((i) => [cubic[i]!, cubic[i + 1]!] as const) as unknown as Bezier;
  const [x0, y0, x1, y1] = line as [number, number, number, number];
  const on = (t: number): XY => [x0 + t * (x1 - x0), y0 + t * (y1 - y0)];
  return [[x0, y0], on(1 / 3), on(2 / 3), [x1, y1]];
}
const curves = (segments: Edge['segments']): Bezier[] => segments.map(bezier);
const first = (e: Edge): XY => bezier(e.segments[0]!)[0];
const last = (e: Edge): XY => bezier(e.segments.at(-1)!)[3];

/** De Casteljau: the point, and the direction there. */
function on(curve: Bezier, t: number): { at: XY; way: XY } {
  const between = (p: XY, q: XY): XY => [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])];
  const [a, b, c] = [between(curve[0], curve[1]), between(curve[1], curve[2]), between(curve[2], curve[3])];
  const [d, e] = [between(a, b), between(b, c)];
  return { at: between(d, e), way: [3 * (e[0] - d[0]), 3 * (e[1] - d[1])] };
}

/** Romberg: an integral over [0, 1] by halving and extrapolating. */
function integral(f: (t: number) => number): number {
  let row = [(f(0) + f(1)) / 2];
  for (let k = 1, n = 1; k <= 13; k++, n *= 2) {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += f((i + 0.5) / n);
    const next = [row[0]! / 2 + sum / (2 * n)];
    for (let j = 1, four = 4; j <= k && j <= 7; j++, four *= 4)
      next.push(next[j - 1]! + (next[j - 1]! - row[j - 1]!) / (four - 1));
    if (k > 5 && Math.abs(next.at(-1)! - row.at(-1)!) < 1e-13 * Math.abs(next.at(-1)!)) return next.at(-1)!;
    row = next;
  }
  return row.at(-1)!;
}
const lengthOf = (e: Edge): number =>
  curves(e.segments).reduce((sum, c) => sum + integral((t) => Math.hypot(...on(c, t).way)), 0);

/** Area of paper on all sheets of the front, mm². */
function paper(document: Document): number {
  let sum = 0;
  for (const piece of document.pieces.filter((p) => p.id !== 'back'))
    for (const part of piece.parts)
      for (const edge of part.edges)
        for (const c of curves(edge.segments))
          sum += integral((t) => {
            const { at, way } = on(c, t);
            return (at[0] * way[1] - at[1] * way[0]) / 2;
          });
  return sum;
}

/** Angles of all sheets that carry a bust point, from the edge that leaves it round to the one that comes to it. */
function paperRound(document: Document, landmark: string): number {
  let sum = 0;
  for (const part of document.pieces.flatMap((p) => p.parts)) {
    const b = part.landmarks[landmark];
    if (!b) continue;
    const leaving = part.edges.findIndex((e) => away(first(e), xy(b)) < 1e-9);
    if (leaving < 0) {
      sum += 2 * Math.PI;
      continue;
    }
    const coming = part.edges.at(leaving - 1)!;
    const [ox, oy] = on(bezier(part.edges[leaving]!.segments[0]!), 0).way;
    const [ix, iy] = on(bezier(coming.segments.at(-1)!), 1).way;
    const turn = Math.atan2(ox * -iy - oy * -ix, ox * -ix + oy * -iy);
    sum += turn > 0 ? turn : turn + 2 * Math.PI;
  }
  return sum;
}

const edgesOf = (document: Document, id?: string): readonly Edge[] =>
  document.pieces
    .filter((p) => p.id !== 'back' && (id === undefined || p.id === id))
    .flatMap((p) => p.parts.flatMap((part) => part.edges));

let folder = '';
const made: Record<'drawn' | 'first' | 'parted' | 'allowed', Document> = {} as never;
function replay(name: keyof typeof made, commands: readonly object[]): void {
  const path = join(folder, `${name}.json`);
  const block = { measures: { bust: 905, waist: 715, napeToWaist: 395 } };
  const recipe = {
    format: 'pin-and-pivot/recipe',
    version: 1,
    block,
    fabric: 'knit',
    seed: 0,
    commands,
  };
  writeFileSync(path, JSON.stringify(recipe));
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/replay.ts', path], {
    cwd: fileURLToPath(new URL('../..', import.meta.url)),
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  if (run.status !== 0) throw new Error(run.stderr);
  made[name] = JSON.parse(run.stdout) as Document;
}
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'outside-'));
  replay('drawn', DRAWN);
  replay('first', FIRST);
  replay('parted', PARTED);
  replay('allowed', ALLOWED);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true }));

describe('an outside program that reads only what replay prints', { timeout: 60_000 }, () => {
  it('can write a recipe that is followed to its end', () => {
    for (const document of Object.values(made)) expect(document.unfollowed).toEqual([]);
    const states = made.parted.pieces.flatMap((p) => p.darts.map((d) => [d.id, d.state, d.residual]));
    expect(states.sort()).toEqual([
      ['left', 'closed', 0],
      ['right', 'closed', 0],
    ]);
  });

  it('finds the same area of paper before and after each move, to 1e-9', () => {
    const before = paper(made.drawn);
    for (const after of [made.first, made.parted])
      expect(Math.abs(paper(after) / before - 1)).toBeLessThan(1e-9);
  });

  // 90.5 cm bust: 90.5 / 4 − 2.5 = 20.125 degrees (Bunka draft, memory).
  it('finds round each bust point a full turn less the dart’s angle, before and after each move', () => {
    const theta = (20.125 * Math.PI) / 180;
    for (const document of [made.drawn, made.first, made.parted])
      for (const side of ['right', 'left'])
        expect(Math.abs(paperRound(document, `${side}/bust-point`) - (2 * Math.PI - theta))).toBeLessThan(
          1e-9,
        );
  });

  it('finds every edge as long as it is said to be, and as the stretch it came from', () => {
    for (const edge of edgesOf(made.parted)) {
      expect(Math.abs(lengthOf(edge) - edge.length)).toBeLessThan(1e-8);
      expect(Math.abs(lengthOf(edge) - (edge.origin.to - edge.origin.from))).toBeLessThan(1e-8);
    }
  });

  it('finds partners of one length, interval by interval, and none for what is not sewn', () => {
    const edges = edgesOf(made.parted);
    const paired = edges.filter((e) => /^(curve|connector)/.test(e.id));
    expect(paired).toHaveLength(10);
    for (const edge of paired) {
      const partner = edges.find((e) => e.id === edge.partner)!;
      expect(partner.partner).toBe(edge.id);
      expect(Math.abs(lengthOf(edge) - lengthOf(partner))).toBeLessThan(1e-8);
    }
    for (const { partner } of edges.filter((e) => /waist|armhole|neckline/.test(e.role)))
      expect(partner).toBeUndefined();
  });

  it('measures openings of 2 d sin(θ/2) on the cut edges', () => {
    const theta = made.parted.block.facts.dartAngle;
    for (const [side, id] of [
      ['right', 'lower'],
      ['left', 'upper'],
    ] as const) {
      const { foot, tip } = made.parted.lines[0]!.feet[side]!;
      const d = away(xy(foot), xy(tip));
      expect(d).toBeGreaterThan(10);
      const banks = edgesOf(made.parted, id).filter((e) => e.role === 'connector' && e.dart === side);
      const ends = banks.map((e) => (away(first(e), xy(tip)) > away(last(e), xy(tip)) ? first(e) : last(e)));
      expect(ends).toHaveLength(2);
      expect(Math.abs(away(ends[0]!, ends[1]!) - 2 * d * Math.sin(theta / 2))).toBeLessThan(1e-9);
      // The seam over the bridge is longer than its partner by about as much, a little less where the bridge cuts the corner.
      const { excess } = made.allowed.pieces.find((p) => p.id === id)!.treatments[0]!;
      expect(excess).toBeGreaterThan(0.7 * away(ends[0]!, ends[1]!));
      expect(excess).toBeLessThan(1.05 * away(ends[0]!, ends[1]!));
    }
  });

  it('finds each notch at one place of both partners', () => {
    const edges = edgesOf(made.parted);
    for (const id of Object.keys(NOTCHES)) {
      const [a, b, ...more] = made.parted.pieces.flatMap((p) => p.notches.filter((n) => n.id === id));
      expect(more).toEqual([]);
      const partner = edges.find((e) => e.id === b!.edge)!;
      expect(edges.find((e) => e.id === a!.edge)!.partner).toBe(b!.edge);
      // Partners run in opposite directions.
      expect(Math.abs(a!.at - (partner.length - b!.at))).toBeLessThan(1e-9);
    }
  });

  // Cut lines are fitted: at most 0.03 mm from the true parallel (the notes on geometry).
  it('finds each cut line at the width that was asked for', () => {
    for (const id of ['upper', 'lower']) {
      const { outline, cutLine } = made.allowed.pieces.find((p) => p.id === id)!;
      const groupOf = (e: Edge) => {
        if (e.id.startsWith('bridge')) return 'style-line';
        return ['style-line', 'neckline', 'waist'].includes(e.role) ? e.role : `${e.side}/${e.role}`;
      };
      for (const [group, width] of Object.entries(WIDTHS[id]!)) {
        const cut = curves(cutLine!.groups[group]!);
        let checked = 0;
        for (const edge of outline.filter((e) => groupOf(e) === group)) {
          for (const seam of curves(edge.segments)) {
            for (const t of [0.25, 0.5, 0.75]) {
              const { at, way } = on(seam, t);
              // Outlines run clockwise on the screen, y down: the outside lies on the left hand.
              const speed = Math.hypot(...way);
              const there: XY = [at[0] + (width * way[1]) / speed, at[1] - (width * way[0]) / speed];
              expect(nearest(cut, there)).toBeLessThan(0.03);
              checked++;
            }
          }
        }
        expect(checked).toBeGreaterThan(0);
      }
      for (const notch of cutLine!.notches)
        expect(Math.abs(away(xy(notch.from), xy(notch.to)) - 9.525)).toBeLessThan(1e-9);
      expect(cutLine!.notches.map((n) => n.id).sort()).toEqual(Object.keys(NOTCHES));
    }
  });
});

/** Distance of a point from curves: the best of many samples, then closed in on. */
function nearest(list: readonly Bezier[], p: XY): number {
  let best = Infinity;
  for (const curve of list) {
    const far = (t: number): number => away(on(curve, t).at, p);
    let t = 0;
    for (let i = 1; i <= 100; i++) if (far(i / 100) < far(t)) t = i / 100;
    let [low, high] = [Math.max(0, t - 0.01), Math.min(1, t + 0.01)];
    for (let i = 0; i < 60; i++) {
      const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
      if (far(a) < far(b)) high = b;
      else low = a;
    }
    best = Math.min(best, far((low + high) / 2));
  }
  return best;
}
