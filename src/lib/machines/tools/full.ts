import { pointAtLength } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import type { Point } from '../../geometry/types.ts';
import { edgeLength } from '../../pattern/edge-length.ts';
import { mouthOf, standsIn } from '../../pattern/mouth.ts';
import type { Edge, FullnessKind } from '../../pattern/types.ts';
import type { AddFullness, Work } from '../../recipe/types.ts';
import { frontPieces, type Scene } from '../scene.ts';
import type { Grip, Reading, ToolSpec, ToolTarget } from '../tool-spec.ts';
import { openMouths } from './back-off.ts';
import { withEdge } from './slashes.ts';

/** How far the new edge reaches on each side until the learner says otherwise, mm. */
const REACH = 30;
const KINDS: readonly FullnessKind[] = ['gathers', 'ease', 'tucks'];
const COUNTS = ['1', '2', '3', '4', '5', '6'];

type Way = 'before' | 'after';
type Open = ReturnType<typeof openMouths>[number];

/** The seam beside a dart's mouth, from the mouth on; `from` counts sewn mm. Openings of other darts take no length. */
function seamBeside({ piece, dart }: Open, way: Way): { edge: Edge; from: number; length: number }[] {
  const found = mouthOf(piece, dart.id);
  if ('refused' in found) return [];
  const { outline, count } = found.ok;
  const run = outline.slice(count);
  if (way === 'before') run.reverse();
  const out: { edge: Edge; from: number; length: number }[] = [];
  let from = 0;
  for (const edge of run) {
    if (standsIn(edge)) continue;
    if (edge.role !== run[0]!.role || edge.side !== run[0]!.side) break;
    const length = edgeLength(edge);
    out.push({ edge, from, length });
    from += length;
  }
  return out;
}

function pointBeside(open: Open, way: Way, mm: number): Point | undefined {
  const stretches = seamBeside(open, way);
  const on = stretches.find(({ from, length }) => mm <= from + length) ?? stretches.at(-1);
  if (!on) return undefined;
  const own = Math.min(on.length, Math.max(0, mm - on.from));
  return pointAtLength(on.edge.chain, way === 'before' ? on.length - own : own);
}

function mmBeside(open: Open, way: Way, point: Point): number {
  let best = 0;
  let least = Infinity;
  for (const { edge, from, length } of seamBeside(open, way)) {
    const near = nearestOnChain(edge.chain, point);
    if (near.distance >= least) continue;
    least = near.distance;
    best = from + (way === 'before' ? length - near.length : near.length);
  }
  return best;
}

const reachOf = (scene: Scene, way: Way, dart: string): number => {
  const value = scene.options[`over:${way}:${dart}`];
  return typeof value === 'number' ? value : REACH;
};

function commandFor(scene: Scene, dart: string): AddFullness {
  const as = KINDS.find((kind) => kind === scene.options['as']) ?? 'gathers';
  const base = {
    do: 'fullness',
    dart,
    as,
    before: reachOf(scene, 'before', dart),
    after: reachOf(scene, 'after', dart),
  } as const;
  return as === 'tucks' ? { ...base, tucks: Number(scene.options['tucks'] ?? 3) } : base;
}

function held(scene: Scene, grip: Grip): { open: Open; way: Way } | undefined {
  const [head, way, id] = grip.target.split(':');
  const open = head === 'over' ? openMouths(scene).find(({ dart }) => dart.id === id) : undefined;
  return open && (way === 'before' || way === 'after') ? { open, way } : undefined;
}

/** The fullness of each edge that was drawn over an opening. */
const fullnesses = (scene: Scene, work: Work): readonly Reading[] =>
  frontPieces({ ...scene, work }).flatMap((piece) =>
    (piece.fullness ?? []).flatMap((f): Reading[] => {
      const edge = piece.seam?.find((e) => e.id === f.edge);
      if (!edge) return [];
      const [from, to] = [pointAtLength(edge.chain, 0), pointAtLength(edge.chain, edgeLength(edge))];
      return [{ id: 'fullness', unit: 'mm', value: f.fullness, piece: piece.id, from, to, dart: f.dart }];
    }),
  );

/** Leaves a dart as fullness: two handles say how far the new edge reaches, a tap on the dart draws it. */
export const fullness: ToolSpec = {
  id: 'fullness',
  options: (scene) => {
    const as = scene.options['as'] ?? 'gathers';
    const tucks = {
      id: 'tucks',
      kind: 'choice',
      value: scene.options['tucks'] ?? '3',
      choices: COUNTS,
    } as const;
    return [{ id: 'as', kind: 'choice', value: as, choices: KINDS }, ...(as === 'tucks' ? [tucks] : [])];
  },
  acts: (scene) =>
    openMouths(scene).map(({ dart }) => ({
      id: `fullness:${dart.id}`,
      about: withEdge(scene.work, dart.id),
      command: commandFor(scene, dart.id),
    })),
  targets: (scene) =>
    openMouths(scene).flatMap((open): ToolTarget[] => {
      const { piece, dart, mouth } = open;
      const base = { kind: 'handle', piece: piece.id, dart: dart.id } as const;
      const ends = (['before', 'after'] as const).flatMap((way): ToolTarget[] => {
        const at = reachOf(scene, way, dart.id);
        const point = pointBeside(open, way, at);
        return point ? [{ ...base, id: `over:${way}:${dart.id}`, point, how: 'carry', ref: way, at }] : [];
      });
      return [...ends, { ...base, id: `mouth:${dart.id}`, point: mouth, how: 'tap' }];
    }),
  pull: (scene, grip, point) => {
    const one = held(scene, grip);
    return (one && pointBeside(one.open, one.way, mmBeside(one.open, one.way, point))) ?? point;
  },
  nudge: (scene, grip, by) => {
    const one = held(scene, grip);
    if (!one) return grip.at;
    const next = mmBeside(one.open, one.way, grip.at) + by.x + by.y;
    return pointBeside(one.open, one.way, Math.max(0, next)) ?? grip.at;
  },
  propose: (scene, grip) => {
    const one = held(scene, grip);
    if (one) return { options: { [grip.target]: mmBeside(one.open, one.way, grip.at) } };
    return { command: commandFor(scene, grip.target.slice(grip.target.indexOf(':') + 1)) };
  },
  readings: (scene, work, grip) => {
    const one = grip && held(scene, grip);
    const all = fullnesses(scene, work);
    if (!grip || !one) return all;
    const value = mmBeside(one.open, one.way, grip.at);
    return [...all, { id: 'reach', unit: 'mm', value, piece: one.open.piece.id, from: grip.at }];
  },
};
