import { chainLength, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { splineThrough } from '../../src/lib/geometry/spline.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { seamGroups } from '../../src/lib/pattern/outline.ts';
import { anchorInside, anchorOn, chainOf, resolveAnchor } from '../../src/lib/recipe/anchors.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import '../../src/lib/recipe/commands/index.ts';
import { toAttempt } from '../../src/lib/recipe/save.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Anchor, Attempt, BlockChoice, Command, Fabric, Work } from '../../src/lib/recipe/types.ts';

/** The steps of the lesson 'slanted-seam', in order. */
export const STEPS = [
  ...['read-the-block', 'open-out', 'style-line', 'notches', 'working-darts', 'connectors', 'first-dart'],
  ...['second-dart', 'separate', 'leftover', 'allowances', 'label-and-grain', 'walk-the-seams'],
] as const;

/** What may differ between correct attempts. Lengths in mm, places as fractions. */
export interface Variations {
  /** Where the line leaves the right shoulder, from the neck. */
  readonly shoulder?: number;
  /** Where it ends on the left side below the dart, from the dart. */
  readonly side?: number;
  /** How far it passes from each bust point, 10 to 25. */
  readonly d1?: number;
  readonly d2?: number;
  /** How far the four notches stand from their feet, 30 to 50. */
  readonly notches?: readonly [number, number, number, number];
  /** Which part of each dart's slash turns. */
  readonly turn?: 'freed' | 'rest';
  /** Separate before the darts are moved. */
  readonly separateFirst?: boolean;
  readonly lesson?: string;
  readonly content?: number;
  readonly seed?: number;
  /** Stop after this step. */
  readonly upTo?: (typeof STEPS)[number];
}

const LINE = 'line';
/** mm: a plain seam by fabric, its partner alike; the neckline less, armholes and waist as much as a knit's seam. */
const SEAM_ALLOWANCE: Readonly<Record<Fabric, number>> = { knit: 10, woven: 15 };
const ALLOWANCE: Readonly<Record<string, number>> = { neckline: 6, waist: 10 };
const allowanceOf = (group: string, fabric: Fabric): number =>
  ALLOWANCE[group] ?? (/style-line|shoulder|side/.test(group) ? SEAM_ALLOWANCE[fabric] : 10);

/** A command as it is written here, without its step. */
type Given = Command extends infer C ? (C extends Command ? Omit<C, 'step'> : never) : never;

/** A finished attempt of the lesson, right in every step, on a demo figure or on measurements. */
export function sampleAttempt(
  figure: string | BlockChoice,
  fabric: Fabric,
  variations: Variations = {},
): Attempt {
  const block = typeof figure === 'string' ? { figure } : figure;
  const commands: Command[] = [];
  let work = startWork(block);
  let step: string = STEPS[0];
  /** Does a command and keeps it; a sample that cannot be followed is a fault of the sample. */
  const give = (command: Given): void => {
    const full = { ...command, step } as Command;
    const next = apply(work, full);
    if ('refused' in next)
      throw new Error(`${step}: ${JSON.stringify(full)} refused: ${JSON.stringify(next.refused)}`);
    work = next.work;
    commands.push(full);
  };

  const steps: Readonly<Record<string, () => void>> = {
    'read-the-block': () => readTheBlock(work, give),
    'open-out': () => give({ do: 'open-out', about: 'centre-front' }),
    'style-line': () => give({ do: 'draw-line', line: LINE, points: linePoints(work, variations) }),
    notches: () => {
      const line = chainOf(work, LINE)!;
      const length = chainLength(line);
      const foot = (side: string) => nearestOnChain(line, landmark(work, `${side}/bust-point`)).length;
      const [n1, n2, n3, n4] = variations.notches ?? [42, 34, 38, 46];
      const marks = {
        n1: foot('right') - n1,
        n2: foot('right') + n2,
        n3: foot('left') - n3,
        n4: foot('left') + n4,
      };
      for (const [id, mm] of Object.entries(marks)) give({ do: 'notch', id, line: LINE, at: mm / length });
    },
    'working-darts': () => {
      for (const dart of ['right', 'left'])
        give({ do: 'extend-dart', dart: dartId(work, dart), to: { landmark: `${dart}/bust-point` } });
    },
    connectors: () => {
      for (const side of ['right', 'left']) {
        const foot = anchorOn(work, LINE, landmark(work, `${side}/bust-point`)) as { at: number };
        give({ do: 'connect', dart: dartId(work, side), line: LINE, at: foot.at });
      }
    },
    'first-dart': () => moveDart('right', 'start'),
    'second-dart': () => moveDart('left', 'end'),
    separate: () => {
      if (!variations.separateFirst) give({ do: 'separate', line: LINE });
      for (const piece of ['upper', 'lower']) give({ do: 'overlay', piece });
    },
    leftover: () => leftover(() => work, give),
    allowances: () => {
      for (const piece of finished(work, fabric)) allowances(work, piece, fabric, give);
    },
    'label-and-grain': () => {
      for (const piece of finished(work, fabric)) labelAndGrain(work, piece, give);
    },
    'walk-the-seams': () => {
      for (const seam of ['style-line', 'right/shoulder', 'left/shoulder', 'right/side', 'left/side']) {
        const says = seam === 'style-line' && fabric === 'knit' ? 'eased' : 'match';
        give({ do: 'walk', seam, along: 'seam', says, as: fabric });
      }
    },
  };

  function moveDart(side: string, from: 'start' | 'end'): void {
    const dart = dartId(work, side);
    if (variations.separateFirst && side === 'right') give({ do: 'separate', line: LINE });
    const slash = { do: 'slash', dart, line: LINE, past: 0 } as const;
    give(variations.separateFirst ? slash : { ...slash, from });
    const about: Anchor = { landmark: `${side}/bust-point` };
    give({ do: 'turn', dart, part: variations.turn ?? 'freed', about, by: { until: 'legs-meet' } });
  }

  for (const id of STEPS) {
    step = id;
    steps[id]!();
    if (id === variations.upTo) break;
  }
  const lesson = { id: variations.lesson ?? 'slanted-seam', content: variations.content ?? 1 };
  return toAttempt({ lesson, block, fabric, seed: variations.seed ?? 1, commands });
}

/** Where a landmark is, mm. */
export function landmark(work: Work, id: string): Point {
  const point = resolveAnchor(work, { landmark: id });
  if (point === undefined) throw new Error(`no landmark ${id}`);
  return point;
}

/** The id of the dart of a side. */
export function dartId(work: Work, side: string): string {
  const dart = work.pieces.flatMap((p) => p.darts).find((d) => d.side === side);
  if (dart === undefined) throw new Error(`no dart on the ${side}`);
  return dart.id;
}

/** The set that is finished in steps 11 to 13. */
const finished = (work: Work, fabric: Fabric): string[] =>
  work.pieces
    .map((p) => p.id)
    .filter((id) => (fabric === 'woven' ? id.endsWith('@woven') : !id.includes('@')));

function readTheBlock(work: Work, give: (command: Given) => void): void {
  give({ do: 'identify', what: 'bust-point', at: { landmark: 'right/bust-point' } });
  give({ do: 'identify', what: 'neck-point', at: { landmark: 'right/neck-point' } });
  for (const edge of ['right/dart-upper', 'right/dart-lower'])
    give({ do: 'identify', what: edge.replace('right/', ''), at: { on: edge, at: 0.5 } });
  give({ do: 'identify', what: 'centre-front', at: { on: 'centre-front', at: 0.5 } });
  const bust = landmark(work, 'right/bust-point');
  const ends = ['right/dart-upper-end', 'right/dart-lower-end'].map((id) => landmark(work, id)) as [
    Point,
    Point,
  ];
  give({ do: 'read', what: 'dart-angle', value: work.block.facts.dartAngle });
  give({ do: 'read', what: 'leg-length', value: distance(bust, ends[0]) });
  give({ do: 'read', what: 'intake', value: distance(ends[0], ends[1]) });
}

/**
 * Five points from the right shoulder to the left side below the dart. The two by the bust points are pushed out until the
 * curve itself, not the point, passes at the wanted distance.
 */
function linePoints(work: Work, { shoulder = 0.45, side = 0.5, d1 = 17, d2 = 17 }: Variations): Anchor[] {
  const b1 = landmark(work, 'right/bust-point');
  const b2 = landmark(work, 'left/bust-point');
  const first = along(work, 'right/shoulder', 'right/neck-point', shoulder);
  const last = along(work, 'left/side-lower', 'left/dart-lower-end', side);
  const start = resolveAnchor(work, first)!;
  const end = resolveAnchor(work, last)!;
  // Out of B1 towards the centre front and a little up, out of B2 towards the waist and a little to the centre.
  const out1 = { x: 0.94, y: -0.34 };
  const out2 = { x: -0.2, y: 0.98 };
  let k1 = d1;
  let k2 = d2;
  const points = (): Point[] => [
    start,
    { x: b1.x + out1.x * k1, y: b1.y + out1.y * k1 },
    { x: (b1.x + b2.x) / 2 - 8, y: (b1.y + b2.y) / 2 + 8 },
    { x: b2.x + out2.x * k2, y: b2.y + out2.y * k2 },
    end,
  ];
  for (let round = 0; round < 30; round++) {
    const line = splineThrough(points());
    k1 += d1 - nearestOnChain(line, b1).distance;
    k2 += d2 - nearestOnChain(line, b2).distance;
  }
  return points().map((p, i) => (i === 0 ? first : i === 4 ? last : anchorInside(work, 'front', p)));
}

/** The anchor on an edge at a fraction counted from the end at which a landmark stands. */
function along(work: Work, edge: string, from: string, fraction: number): Anchor {
  const chain: Chain = chainOf(work, edge)!;
  const p = landmark(work, from);
  const forward =
    distance(pointAtLength(chain, 0), p) < distance(pointAtLength(chain, chainLength(chain)), p);
  return { on: edge, at: forward ? fraction : 1 - fraction };
}

/** Step 10: copy for the woven; ease in what was cut first; take out of the copy. */
function leftover(work: () => Work, give: (command: Given) => void): void {
  give({ do: 'copy', as: 'woven' });
  const sides = [
    {
      piece: 'lower',
      side: 'right',
      end: 'start',
      from: 'n1',
      to: 'n2',
      edge: 'right/shoulder',
      again: 'n1',
    },
    { piece: 'upper', side: 'left', end: 'end', from: 'n3', to: 'n4', edge: 'left/side', again: 'n4' },
  ] as const;
  for (const { piece, side, from, to } of sides) {
    const dart = dartId(work(), side);
    give({ do: 'bridge', piece, dart, before: 25, after: 25 });
    give({ do: 'ease', piece, dart, from, to });
  }
  for (const { piece: name, side, end, edge, again } of sides) {
    const dart = dartId(work(), side);
    const piece = `${name}@woven`;
    give({ do: 'bridge', piece, dart, before: 25, after: 25 });
    give({ do: 'take-out', piece, dart, end, amount: 'measured' });
    give({ do: 'true', edge, as: 'woven' });
    give({ do: 'renotch', piece, notch: again });
  }
}

function allowances(work: Work, pieceId: string, fabric: Fabric, give: (command: Given) => void): void {
  const piece = work.pieces.find((p) => p.id === pieceId)!;
  const groups = seamGroups(piece).map((g) => g.id);
  for (const group of groups) give({ do: 'allow', piece: pieceId, group, width: allowanceOf(group, fabric) });
  groups.forEach((before, i) => {
    const after = groups[(i + 1) % groups.length]!;
    if (groups.length < 2 || before === after) return;
    // The style line is sewn before the edges it runs into, the shoulder before neckline and armhole.
    const rank = (id: string) => ['style-line', 'shoulder', 'side'].findIndex((name) => id.endsWith(name));
    const sewn = [before, after].filter((id) => rank(id) >= 0).sort((a, b) => rank(a) - rank(b))[0];
    if (sewn === undefined) give({ do: 'corner', piece: pieceId, before, after, form: 'mitre' });
    else give({ do: 'corner', piece: pieceId, before, after, form: 'reflect', first: sewn });
  });
  give({ do: 'carry-notches', piece: pieceId });
}

function labelAndGrain(work: Work, pieceId: string, give: (command: Given) => void): void {
  const name = pieceId.split('@')[0]!;
  const names: Record<string, string> = {
    upper: 'Upper front',
    lower: 'Lower front',
    back: 'Back',
    'back-left': 'Back, left half',
    'back-right': 'Back, right half',
  };
  // Only the back as drafted is the same for both halves.
  const pair = name === 'back';
  give({ do: 'label', piece: pieceId, name: names[name]!, cut: pair ? 2 : 1, rightSideUp: !pair });
  const piece = work.pieces.find((p) => p.id === pieceId)!;
  const kept = piece.parts.find((p) => p.grain === 'kept') ?? piece.parts[0]!;
  const points = kept.edges.map((e) => e.chain[0]!.a);
  const middle = {
    x: points.reduce((sum, p) => sum + p.x, 0) / points.length,
    y: points.reduce((sum, p) => sum + p.y, 0) / points.length,
  };
  give({ do: 'grain', piece: pieceId, at: anchorInside(work, pieceId, middle), angle: 0 });
}
