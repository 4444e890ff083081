import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

/*
 * What an outside program needs to measure a replay document: types of the JSON as it is printed and arithmetic of its own. Nothing of the
 * project is imported here.
 */

export type XY = readonly [number, number];
export type Bezier = readonly [XY, XY, XY, XY];
export interface At {
  readonly x: number;
  readonly y: number;
}
type Segments = readonly { readonly line?: readonly number[]; readonly cubic?: readonly number[] }[];
export interface Edge {
  readonly id: string;
  readonly role: string;
  readonly side: string;
  readonly partner?: string;
  readonly dart?: string;
  readonly length: number;
  readonly segments: Segments;
}
export interface Piece {
  readonly id: string;
  readonly outline: readonly Edge[];
  readonly parts: readonly {
    readonly edges: readonly Edge[];
    readonly lines: readonly { readonly id: string; readonly kind: string; readonly segments: Segments }[];
    readonly landmarks: Readonly<Record<string, At>>;
  }[];
  readonly notches: readonly { readonly id: string; readonly edge: string; readonly at: number }[];
  readonly finished?: readonly { readonly dart: string; readonly sewnPoint: At }[];
  readonly fullness?: readonly {
    readonly dart: string;
    readonly as: string;
    readonly edge: string;
    readonly before: number;
    readonly after: number;
    readonly fullness: number;
    readonly tucks?: number;
  }[];
  readonly smoothed?: readonly { readonly reach: number; readonly moved: number; readonly shorter: number }[];
}
export interface Document {
  readonly block: { readonly facts: { readonly dartAngle: number } };
  readonly pieces: readonly Piece[];
  readonly unfollowed: readonly unknown[];
}

/** Runs the command line on a recipe and reads what it prints. */
export class Replayer {
  private readonly folder = mkdtempSync(join(tmpdir(), 'outside-'));
  private count = 0;

  async replay(block: object, commands: readonly object[]): Promise<Document> {
    const path = join(this.folder, `${this.count++}.json`);
    const head = { format: 'pin-and-pivot/recipe', version: 1, block, fabric: 'knit', seed: 0 };
    writeFileSync(path, JSON.stringify({ ...head, commands }));
    const { stdout } = await promisify(execFile)(
      process.execPath,
      ['--import', 'tsx', 'src/cli/replay.ts', path],
      { cwd: fileURLToPath(new URL('../..', import.meta.url)), maxBuffer: 1e8 },
    );
    return JSON.parse(stdout) as Document;
  }

  clear(): void {
    rmSync(this.folder, { recursive: true });
  }
}

export const xy = ({ x, y }: At): XY => [x, y];
export const away = (p: XY, q: XY): number => Math.hypot(p[0] - q[0], p[1] - q[1]);

/** A segment as a cubic, whichever it is. */
function bezier({ line, cubic }: Segments[number]): Bezier {
  if (cubic) return [0, 2, 4, 6].map((i) => [cubic[i]!, cubic[i + 1]!] as const) as unknown as Bezier;
  const [x0, y0, x1, y1] = line as [number, number, number, number];
  const on = (t: number): XY => [x0 + t * (x1 - x0), y0 + t * (y1 - y0)];
  return [[x0, y0], on(1 / 3), on(2 / 3), [x1, y1]];
}
export const curves = (e: { readonly segments: Segments }): Bezier[] => e.segments.map(bezier);
export const first = (e: Edge): XY => bezier(e.segments[0]!)[0];
export const last = (e: Edge): XY => bezier(e.segments.at(-1)!)[3];

/** De Casteljau: the point, and the derivative there. */
export function on(curve: Bezier, t: number): { readonly at: XY; readonly way: XY } {
  const between = (p: XY, q: XY): XY => [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])];
  const [a, b, c] = [between(curve[0], curve[1]), between(curve[1], curve[2]), between(curve[2], curve[3])];
  const [d, e] = [between(a, b), between(b, c)];
  return { at: between(d, e), way: [3 * (e[0] - d[0]), 3 * (e[1] - d[1])] };
}

/** Romberg: an integral from 0 to `to` by halving and extrapolating. */
function integral(f: (t: number) => number, to: number): number {
  let row = [(to * (f(0) + f(to))) / 2];
  for (let k = 1, n = 1; k <= 14; k++, n *= 2) {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += f(((i + 0.5) / n) * to);
    const next = [row[0]! / 2 + (sum * to) / (2 * n)];
    for (let j = 1, four = 4; j <= k && j <= 7; j++, four *= 4)
      next.push(next[j - 1]! + (next[j - 1]! - row[j - 1]!) / (four - 1));
    if (k > 5 && Math.abs(next.at(-1)! - row.at(-1)!) < 1e-13 * Math.abs(next.at(-1)!)) return next.at(-1)!;
    row = next;
  }
  return row.at(-1)!;
}
const speed = (c: Bezier) => (t: number) => Math.hypot(...on(c, t).way);
export const lengthOf = (e: { readonly segments: Segments }): number =>
  curves(e).reduce((sum, c) => sum + integral(speed(c), 1), 0);

/** Arc length from an edge's start to its point nearest to p, and how far away that is. */
export function along(
  e: { readonly segments: Segments },
  p: XY,
): { readonly at: number; readonly off: number } {
  let best = { at: 0, off: Infinity };
  let before = 0;
  for (const c of curves(e)) {
    const off = (t: number): number => away(on(c, t).at, p);
    let t = 0;
    for (let k = 0; k <= 200; k++) if (off(k / 200) < off(t)) t = k / 200;
    // Golden section within the two samples beside it.
    let [lo, hi] = [Math.max(0, t - 1 / 200), Math.min(1, t + 1 / 200)];
    const g = (Math.sqrt(5) - 1) / 2;
    for (let k = 0; k < 60; k++) {
      const [a, b] = [hi - g * (hi - lo), lo + g * (hi - lo)];
      if (off(a) < off(b)) hi = b;
      else lo = a;
    }
    for (const u of [t, (lo + hi) / 2, 0, 1])
      if (off(u) < best.off) best = { at: before + (u === 0 ? 0 : integral(speed(c), u)), off: off(u) };
    before += integral(speed(c), 1);
  }
  return best;
}

/** Unit direction in which an edge ends, and in which it begins. */
export function endWay(e: Edge): XY {
  const [x, y] = on(bezier(e.segments.at(-1)!), 1).way;
  return [x / Math.hypot(x, y), y / Math.hypot(x, y)];
}
export function startWay(e: Edge): XY {
  const [x, y] = on(bezier(e.segments[0]!), 0).way;
  return [x / Math.hypot(x, y), y / Math.hypot(x, y)];
}

/** Paper round a landmark, radians: the angles of all sheets that carry it; a full turn on a sheet that has it inside. */
export function paperRound(document: Document, landmark: string): number {
  let sum = 0;
  for (const part of document.pieces.flatMap((p) => p.parts)) {
    const b = part.landmarks[landmark];
    if (!b) continue;
    const leaving = part.edges.flatMap((e, i) => (away(first(e), xy(b)) < 1e-9 ? [i] : []));
    if (leaving.length === 0) sum += 2 * Math.PI;
    for (const i of leaving) {
      const [ox, oy] = startWay(part.edges[i]!);
      const [ix, iy] = endWay(part.edges.at(i - 1)!);
      const turn = Math.atan2(ox * -iy - oy * -ix, ox * -ix + oy * -iy);
      sum += turn > 0 ? turn : turn + 2 * Math.PI;
    }
  }
  return sum;
}

/** Paper of the front on all its sheets, mm². */
export function paper(document: Document): number {
  let sum = 0;
  for (const piece of document.pieces.filter((p) => p.id.startsWith('front')))
    for (const part of piece.parts)
      for (const edge of part.edges)
        for (const c of curves(edge))
          sum += integral((t) => {
            const { at, way } = on(c, t);
            return (at[0] * way[1] - at[1] * way[0]) / 2;
          }, 1);
  return sum;
}
