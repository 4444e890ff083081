import { nearestOnChain } from '../../geometry/nearest.ts';
import type { Point } from '../../geometry/types.ts';
import { edgeLength } from '../../pattern/edge-length.ts';
import { offOf, partedSeam, placeOff, type PartedSeam } from '../../pattern/notch-seam.ts';
import type { Piece } from '../../pattern/types.ts';
import { frontPieces, type Scene } from '../scene.ts';
import type { Reading, ToolSpec, ToolTarget } from '../tool-spec.ts';
import { pieceAnd } from './seam.ts';

interface Side {
  readonly piece: Piece;
  readonly line: string;
  readonly seam: PartedSeam;
}

/** The sides of seams that the front was parted along, one for each piece and seam. */
export const partedSides = (pieces: readonly Piece[]): readonly Side[] =>
  pieces.flatMap((piece) =>
    ['princess', 'princess-left'].flatMap((line): Side[] => {
      const seam = partedSeam(piece, line);
      return seam ? [{ piece, line, seam }] : [];
    }),
  );

/** The next free id of a notch: `n1`, `n2` ... */
export function freeNotch(pieces: readonly Piece[]): string {
  const used = new Set(pieces.flatMap((piece) => piece.notches.map((m) => m.id)));
  let n = 1;
  while (used.has(`n${n}`)) n++;
  return `n${n}`;
}

/** How far from its bust point the place on a seam is that a point is nearest to, mm, and how near. */
function nearestOff(seam: PartedSeam, point: Point): { readonly off: number; readonly distance: number } {
  const [one, two] = [seam.first, seam.second].map((edge) => ({
    edge,
    near: nearestOnChain(edge.chain, point),
  }));
  const best = one!.near.distance <= two!.near.distance ? one! : two!;
  const notch = { id: '', line: '', edge: best.edge.id, at: best.near.length };
  return { off: offOf(seam, notch) ?? 0, distance: best.near.distance };
}

const sideOf = (scene: Scene, piece: string, line: string): Side | undefined =>
  partedSides(frontPieces(scene)).find((s) => s.piece.id === piece && s.line === line);

/** A target's side of the seam and its notch, if it stands for one: ids are `notch:<piece>:<line>+<id>`, `new:<piece>:<line>`. */
function held(scene: Scene, target: string): { side: Side | undefined; id: string | undefined } {
  const { piece, rest } = pieceAnd(target);
  const [line = '', id] = rest.split('+');
  return { side: sideOf(scene, piece, line), id };
}

/** The side of a seam that lies under a point, within reach. */
const sideAt = (scene: Scene, point: Point): Side | undefined =>
  partedSides(frontPieces(scene))
    .map((side) => ({ side, d: nearestOff(side.seam, point).distance }))
    .filter(({ d }) => d <= scene.reach)
    .sort((a, b) => a.d - b.d)[0]?.side;

/** Marks notches on both edges of a parted seam: on one of them a place is pressed, or a plus sign slid along from the bust point. */
export const notchSeam: ToolSpec = {
  id: 'notch-seam',
  targets: (scene) =>
    partedSides(frontPieces(scene)).flatMap(({ piece, line, seam }): ToolTarget[] => {
      const marked = piece.notches.flatMap((m): ToolTarget[] => {
        const off = offOf(seam, m);
        const place = off === undefined ? undefined : placeOff(seam, off);
        if (!place) return [];
        const id = `notch:${piece.id}:${line}+${m.id}`;
        return [
          { id, kind: 'notch', point: place.point, piece: piece.id, how: 'carry', ref: m.id, at: off! },
        ];
      });
      const fresh: ToolTarget = {
        id: `new:${piece.id}:${line}`,
        kind: 'add',
        point: seam.joint,
        piece: piece.id,
        how: 'carry',
        at: 0,
        anywhere: true,
      };
      return [...marked, fresh].sort((a, b) => a.at! - b.at!);
    }),
  press: (scene, point) => {
    const side = sideAt(scene, point);
    return side && { target: `new:${side.piece.id}:${side.line}`, how: 'tap' };
  },
  pull: (scene, grip, point) => {
    const { side } = held(scene, grip.target);
    return (side && placeOff(side.seam, nearestOff(side.seam, point).off)?.point) ?? point;
  },
  nudge: (scene, grip, by) => {
    const { side } = held(scene, grip.target);
    if (!side) return grip.at;
    const off = nearestOff(side.seam, grip.at).off - by.x - by.y;
    const least = -edgeLength(side.seam.second);
    return placeOff(side.seam, Math.min(edgeLength(side.seam.first), Math.max(least, off)))?.point ?? grip.at;
  },
  propose: (scene, grip) => {
    const { side, id } = held(scene, grip.target);
    if (!side) return undefined;
    const { off } = nearestOff(side.seam, grip.at);
    const notch = id ?? freeNotch(frontPieces(scene));
    return { command: { do: 'notch-seam', id: notch, line: side.line, off } };
  },
  readings: (scene, _work, grip) => {
    const side = grip && held(scene, grip.target).side;
    if (!grip || !side) return [];
    const value = Math.abs(nearestOff(side.seam, grip.at).off);
    const reading: Reading = {
      id: 'along',
      unit: 'mm',
      value,
      piece: side.piece.id,
      from: side.seam.joint,
      to: grip.at,
    };
    return [reading];
  },
};
