import { pointAtLength } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { distance, lerp } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { edgeLength } from '../../pattern/edge-length.ts';
import { mouthOf } from '../../pattern/mouth.ts';
import { outlineOf } from '../../pattern/outline.ts';
import type { Edge, Piece } from '../../pattern/types.ts';
import type { PartAtDarts } from '../../recipe/types.ts';
import { dartsOf, frontPieces, type Scene } from '../scene.ts';
import type { Grip, Reading, ToolSpec, ToolTarget } from '../tool-spec.ts';
import { pieceAnd } from './seam.ts';

interface Candidate {
  readonly id: string;
  readonly bustPoint: string;
  readonly piece: string;
  readonly point: Point;
}

/** Darts along which the front can be cut apart: open, or just cut, and drawn to the bust point. */
const candidates = (scene: Scene): readonly Candidate[] =>
  dartsOf(scene).flatMap(({ piece, dart }) => {
    const mouth = mouthOf(piece, dart.id);
    if ('refused' in mouth || dart.state !== 'working') return [];
    return [
      {
        id: dart.id,
        bustPoint: dart.bustPoint,
        piece: piece.id,
        point: lerp(mouth.ok.start, mouth.ok.end, 0.5),
      },
    ];
  });

/** Two different darts of one bust point, each pair once. */
const pairs = (scene: Scene): readonly (readonly [string, string])[] => {
  const all = candidates(scene);
  return all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b) => (a.bustPoint === b.bustPoint ? [[a.id, b.id] as const] : [])),
  );
};

const apart = (darts: readonly [string, string]): PartAtDarts => ({ do: 'part-at-darts', darts });

/** Cuts the front apart along two darts: choose one, then the other. */
export const partAtDarts: ToolSpec = {
  id: 'part-at-darts',
  acts: (scene) =>
    pairs(scene).map((darts) => ({
      id: `part:${darts.join('+')}`,
      about: darts.join('+'),
      command: apart(darts),
    })),
  targets: (scene) =>
    candidates(scene).map(({ id, piece, point }) => ({
      id: `mouth:${id}`,
      kind: 'handle',
      point,
      piece,
      how: 'tap',
      dart: id,
      done: scene.options['one'] === id,
    })),
  propose: (scene, grip) => {
    const id = grip.target.slice(grip.target.indexOf(':') + 1);
    const one = candidates(scene).find((c) => c.id === scene.options['one']);
    return one === undefined || one.id === id ? { options: { one: id } } : { command: apart([one.id, id]) };
  },
};

interface Corner {
  readonly piece: Piece;
  readonly at: string;
  readonly into: Edge;
  readonly outOf: Edge;
  readonly point: Point;
}

/** The corners of the fronts' style seams that lie in a bust point. */
const corners = (scene: Scene): readonly Corner[] =>
  frontPieces(scene).flatMap((piece) => {
    const outline = outlineOf(piece);
    const busts = piece.parts.flatMap((part) =>
      Object.entries(part.landmarks).filter(([id]) => id.endsWith('bust-point')),
    );
    return outline.flatMap((outOf, i): Corner[] => {
      const into = outline.at(i - 1)!;
      const point = outOf.chain[0]!.a;
      const found = busts.find(([, p]) => distance(p, point) < 1e-6);
      if (!found || outOf.role !== 'style-line' || into.role !== 'style-line') return [];
      return [{ piece, at: found[0], into, outOf, point }];
    });
  });

const cornerIn = (scene: Scene, grip: Grip): Corner | undefined => {
  const { piece, rest } = pieceAnd(grip.target);
  return corners(scene).find((c) => c.piece.id === piece && c.at === rest);
};

/** How far along the seam from its corner a point is, mm, on whichever side it is nearer to. */
function reached({ into, outOf }: Corner, point: Point): number {
  const a = nearestOnChain(into.chain, point);
  const b = nearestOnChain(outOf.chain, point);
  return a.distance < b.distance ? edgeLength(into) - a.length : b.length;
}

const along = ({ outOf }: Corner, mm: number): Point =>
  pointAtLength(outOf.chain, Math.min(edgeLength(outOf), Math.max(0, mm)));

/** How far each smoothed seam moved. */
const moved = (scene: Scene, work: Scene['work']): readonly Reading[] =>
  frontPieces({ ...scene, work }).flatMap((piece) =>
    (piece.smoothed ?? []).flatMap(({ at, moved: value }): Reading[] => {
      const from = piece.parts.find((part) => part.landmarks[at])?.landmarks[at];
      return from ? [{ id: 'moved', unit: 'mm', value, piece: piece.id, from }] : [];
    }),
  );

/** Smooths the corner of a princess seam: the handle is pulled along the seam as far as the curve is to reach. */
export const smoothSeam: ToolSpec = {
  id: 'smooth-seam',
  targets: (scene) =>
    corners(scene).map(({ piece, at, point }): ToolTarget => ({
      id: `smooth:${piece.id}:${at}`,
      kind: 'handle',
      point,
      piece: piece.id,
      how: 'carry',
      ref: at,
    })),
  pull: (scene, grip, point) => {
    const corner = cornerIn(scene, grip);
    if (!corner) return point;
    const near = [corner.into, corner.outOf].map((e) => nearestOnChain(e.chain, point));
    return near.sort((a, b) => a.distance - b.distance)[0]!.point;
  },
  nudge: (scene, grip, by) => {
    const corner = cornerIn(scene, grip);
    return corner ? along(corner, reached(corner, grip.at) + by.x + by.y) : grip.at;
  },
  propose: (scene, grip) => {
    const corner = cornerIn(scene, grip);
    const reach = corner && reached(corner, grip.at);
    if (!corner || reach === undefined || reach < 0.01) return undefined;
    return { command: { do: 'smooth-seam', piece: corner.piece.id, at: corner.at, reach } };
  },
  readings: (scene, work, grip) => {
    const corner = grip && cornerIn(scene, grip);
    const all = moved(scene, work);
    if (!grip || !corner) return all;
    const value = reached(corner, grip.at);
    return [...all, { id: 'reach', unit: 'mm', value, piece: corner.piece.id, from: grip.at }];
  },
};
