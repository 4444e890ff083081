import { rotationByAngle } from '../geometry/isometry.ts';
import type { Point } from '../geometry/types.ts';
import type { Circle, Tracing } from '../machines/tool-spec.ts';
import type { Work } from '../recipe/types.ts';
import { matrixOf } from './layout.ts';
import { partModel, type Drawn } from './model.ts';
import { pathOf } from './paths.ts';

/** What is drawn on the table beside the pieces: where something lay, where something is to go. */
export interface Guide extends Drawn {
  /** The piece in whose coordinates it is, and a motion of its own there, as an SVG matrix. */
  readonly piece: string;
  readonly motion: string;
  /** Lies over the pieces, not under them. */
  readonly over: boolean;
}

export interface GuideView {
  readonly work: Work;
  /** Parts that are on their way, by id. */
  readonly turning: Readonly<Record<string, string>> | undefined;
  readonly tracing: Tracing | undefined;
  readonly circle: Circle | undefined;
}

/** The guides of what is held now, or of a picture of a demonstration. */
export function guides({ work, turning, tracing, circle }: GuideView): readonly Guide[] {
  return [
    ...(tracing ? traced(tracing) : turning ? ghosts(work, turning) : []),
    ...(circle
      ? [over({ key: 'circle', stroke: 'circle', d: ring(circle), piece: circle.piece, motion: '' })]
      : []),
  ];
}

const over = (guide: Omit<Guide, 'over'>): Guide => ({ ...guide, over: true });

/** Where the parts lay that are on their way. */
const ghosts = (work: Work, turning: Readonly<Record<string, string>>): Guide[] =>
  work.pieces.flatMap((piece) =>
    piece.parts
      .filter(({ id }) => id in turning)
      .map((part) => {
        const { fill: d } = partModel(part);
        const key = `ghost ${piece.id} ${part.id}`;
        return { key, stroke: 'ghost', d, piece: piece.id, motion: '', over: false };
      }),
  );

/** The first half as it was traced, and the second as it goes with the block. */
function traced({ piece, pin, angle, first, second, done }: Tracing): Guide[] {
  const motion = matrixOf(rotationByAngle(pin, angle));
  return [
    over({ key: 'first', stroke: 'traced', d: pathOf(first), piece, motion: '' }),
    over({ key: 'second', stroke: done ? 'traced' : 'to-trace', d: pathOf(second), piece, motion }),
    over({ key: 'pin', stroke: 'pinned', d: ring({ centre: pin, radius: 3 }), piece, motion: '' }),
  ];
}

const ring = ({ centre: { x, y }, radius: r }: { readonly centre: Point; readonly radius: number }): string =>
  `M${(x - r).toFixed(2)} ${y.toFixed(2)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
