import type { Point } from '../../geometry/types.ts';
import { styleSeam, type Stretch, type StyleSeam } from '../../pattern/style-seam.ts';
import type { Piece } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';
import { frontPieces, type Scene } from '../scene.ts';
import { openings } from '../../pattern/openings.ts';
import type { Grip, Reading, ToolSpec, ToolTarget } from '../tool-spec.ts';
import { nearestAlong, seamPoint } from './seam.ts';

/** How far the bridge reaches on each side until the learner says otherwise, mm. */
const REACH = 20;

interface Gap {
  readonly piece: Piece;
  readonly seam: StyleSeam;
  readonly stretch: Stretch;
  readonly dart: string;
}

/** The openings that connectors left in the style seams and that are not bridged yet. */
export const gaps = (scene: Scene): readonly Gap[] =>
  frontPieces(scene).flatMap((piece) => {
    const seam = styleSeam(piece);
    return (seam?.stretches ?? []).flatMap((stretch) =>
      seam && !stretch.edge && stretch.dart !== undefined && stretch.length > 0.01
        ? [{ piece, seam, stretch, dart: stretch.dart }]
        : [],
    );
  });

const sideOf = (scene: Scene, gap: Gap, side: string): number => {
  const value = scene.options[`${side}:${gap.piece.id}:${gap.dart}`];
  return typeof value === 'number' ? value : REACH;
};

const found = (scene: Scene, target: string): Gap | undefined => {
  const [, piece, dart] = target.split(':');
  return gaps(scene).find((gap) => gap.piece.id === piece && gap.dart === dart);
};

function reached(scene: Scene, gap: Gap, grip: Grip): number {
  const along = nearestAlong(gap.seam, grip.at);
  const { from, length } = gap.stretch;
  return Math.max(0, grip.target.startsWith('before:') ? from - along : along - from - length);
}

/** The excess of every opening of the fronts, measured on the cut edges against the partner; still shown once it is bridged. */
export function leftovers(scene: Scene, work: Work): readonly Reading[] {
  const fronts = frontPieces({ ...scene, work });
  return fronts.flatMap((piece) =>
    openings(
      piece,
      fronts.find((other) => other !== piece),
    ).map(({ dart, foot, farFoot, excess }) => ({
      id: 'leftover',
      unit: 'mm',
      value: excess,
      piece: piece.id,
      from: foot,
      to: farFoot,
      dart,
    })),
  );
}

/** Bridges and blends an opening: its two handles say how far the new curve reaches into the seam on each side. */
export const bridge: ToolSpec = {
  id: 'bridge',
  acts: (scene) =>
    gaps(scene).map((gap) => ({
      id: `bridge:${gap.piece.id}:${gap.dart}`,
      about: gap.dart,
      command: {
        do: 'bridge',
        piece: gap.piece.id,
        dart: gap.dart,
        before: sideOf(scene, gap, 'before'),
        after: sideOf(scene, gap, 'after'),
      },
    })),
  targets: (scene) =>
    gaps(scene).flatMap((gap) => {
      const { piece, seam, stretch, dart } = gap;
      const before = stretch.from - sideOf(scene, gap, 'before');
      const after = stretch.from + stretch.length + sideOf(scene, gap, 'after');
      const at = (side: string, along: number, point: Point | undefined): ToolTarget[] =>
        point
          ? [
              {
                id: `${side}:${piece.id}:${dart}`,
                kind: 'handle',
                point,
                piece: piece.id,
                how: 'carry',
                dart,
                ref: side,
                at: along,
              },
            ]
          : [];
      return [
        ...at('before', before, seamPoint(piece, seam, before)),
        ...at('after', after, seamPoint(piece, seam, after)),
      ];
    }),
  pull: (scene, grip, point) => {
    const gap = found(scene, grip.target);
    if (!gap) return point;
    const { from, length } = gap.stretch;
    const along = nearestAlong(gap.seam, point);
    const kept = grip.target.startsWith('before:') ? Math.min(along, from) : Math.max(along, from + length);
    return seamPoint(gap.piece, gap.seam, kept) ?? grip.at;
  },
  nudge: (scene, grip, by) => {
    const gap = found(scene, grip.target);
    if (!gap) return grip.at;
    return seamPoint(gap.piece, gap.seam, nearestAlong(gap.seam, grip.at) + by.x + by.y) ?? grip.at;
  },
  propose: (scene, grip) => {
    const gap = found(scene, grip.target);
    return gap && { options: { [grip.target]: reached(scene, gap, grip) } };
  },
  readings: (scene, work, grip) => {
    const gap = grip && found(scene, grip.target);
    const open = leftovers(scene, work);
    if (!grip || !gap) return open;
    const value = reached(scene, gap, grip);
    return [...open, { id: 'reach', unit: 'mm', value, piece: gap.piece.id, from: grip.at }];
  },
};
