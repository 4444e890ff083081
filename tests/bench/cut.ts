import { areaD, differenceD, FillRule, intersectD, type PathsD } from 'clipper2-ts';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { chainLength } from '../../src/lib/geometry/chain.ts';
import { polyline } from '../../src/lib/geometry/polyline.ts';
import { reverseChain } from '../../src/lib/geometry/chain-moved.ts';
import { subchain } from '../../src/lib/geometry/subchain.ts';
import { intersectChains } from '../../src/lib/geometry/intersect.ts';
import { IDENTITY } from '../../src/lib/geometry/isometry.ts';
import { signedArea } from '../../src/lib/geometry/outline.ts';
import { cubic } from '../../src/lib/geometry/segment.ts';
import { type Bank, cutPart } from '../../src/lib/pattern/cut.ts';
import { chainOf } from '../../src/lib/pattern/outline.ts';
import type { Edge, Part } from '../../src/lib/pattern/types.ts';
import { piece } from './geometry.ts';
import { interleaved, type BenchOptions, type BenchRow } from './harness.ts';

const p = (x: number, y: number): Point => ({ x, y });

const outline: Chain = signedArea(piece) > 0 ? piece : reverseChain(piece);

const edges: Edge[] = outline.map((s, i) => ({
  id: `edge-${i}`,
  role: 'side',
  side: 'right',
  chain: [s],
  origin: { edge: `edge-${i}`, from: 0, to: chainLength([s]) },
}));

const sheet: Part = {
  id: 'sheet',
  edges,
  lines: [],
  landmarks: Object.fromEntries(edges.map((e) => [`start of ${e.id}`, e.chain[0]!.a])),
  grain: 'kept',
  motion: IDENTITY,
};

const bank = (which: string): Bank => ({
  id: `line/1/${which}`,
  role: 'style-line',
  side: 'centre',
  origin: { edge: 'line', from: 0, to: 1 },
});

/** 64 slightly slanted curves across the piece, from well outside to well outside. */
const cuts = Array.from({ length: 64 }, (_, i) =>
  cubic(p(-300, 230 + i / 3), p(-200, 200 + i / 2), p(-80, 270 - i / 3), p(60, 220 + i / 4)),
);

/** The crossings, the stretch between them, the cut: two sheets with named edges, origins, partners and landmarks. */
function ours(i: number): number {
  const path = [cuts[i & 63]!];
  const found = intersectChains(path, outline);
  const chain = subchain(path, found[0]!.a.length, found[found.length - 1]!.a.length);
  const cut = cutPart(sheet, [{ chain, left: bank('a'), right: bank('b') }]);
  if ('refused' in cut) throw new Error(cut.refused.code);
  return cut.ok.left.edges.length;
}

const FLAT = 0.05;
const subject: PathsD = [polyline(outline, FLAT).map(({ x, y }) => ({ x, y }))];
/** Everything above each cut, flattened beforehand. */
const above: PathsD[] = cuts.map((s) => [
  [...polyline([s], FLAT), p(60, -50), p(-300, -50)].map(({ x, y }) => ({ x, y })),
]);

function theirs(i: number): number {
  const clip = above[i & 63]!;
  return (
    intersectD(subject, clip, FillRule.NonZero, 4).length +
    differenceD(subject, clip, FillRule.NonZero, 4).length
  );
}

/** Both sides must have cut the same: areas within what chords 0.05 mm off the curves cost, mm². */
function sameAreas(): void {
  for (let i = 0; i < cuts.length; i++) {
    const path = [cuts[i]!];
    const found = intersectChains(path, outline);
    const chain = subchain(path, found[0]!.a.length, found[found.length - 1]!.a.length);
    const cut = cutPart(sheet, [{ chain, left: bank('a'), right: bank('b') }]);
    if ('refused' in cut) throw new Error(cut.refused.code);
    const upper = intersectD(subject, above[i]!, FillRule.NonZero, 4).reduce(
      (sum, q) => sum + Math.abs(areaD(q)),
      0,
    );
    const off = signedArea(chainOf(cut.ok.left.edges)) - upper;
    if (!(Math.abs(off) < 8)) throw new Error(`cut ${i}: areas differ by ${off} mm²`);
  }
}

/** The row "cut in two, names kept" of the table of ratios. */
export function cutBench(options: BenchOptions = {}): BenchRow[] {
  sameAreas();
  return [
    {
      name: 'cut in two, names kept',
      against: 'clipper2-ts intersect + difference, flattened to 0.05 mm',
      goal: 1 / 2,
      ...interleaved(ours, theirs, { iterations: 500, ...options }),
    },
  ];
}
