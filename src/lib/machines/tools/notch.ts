import { chainLength, pointAtLength } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import type { Point } from '../../geometry/types.ts';
import type { Notch } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';
import { bustPoints, frontOf, lineOf, type Scene } from '../scene.ts';
import type { Grip, Reading, ToolSpec, ToolTarget } from '../tool-spec.ts';

/** The notches marked on the line that is not cut yet. */
export const notchesOn = (work: Work, line: string): readonly Notch[] =>
  (frontOf(work)?.parts ?? []).flatMap((part) =>
    part.lines.filter((inner) => inner.id === line).flatMap((inner) => inner.notches),
  );

/** The next free id: `n1`, `n2` ... */
export function nextNotch(work: Work, line: string): string {
  const used = new Set(notchesOn(work, line).map((notch) => notch.id));
  let n = 1;
  while (used.has(`n${n}`)) n++;
  return `n${n}`;
}

/** Slides a held point along the line: arrows right and down go towards its end. */
export function alongLine(scene: Scene, grip: Grip, by: Point): Point {
  const line = lineOf(scene.work);
  if (!line) return grip.at;
  const at = nearestOnChain(line.chain, grip.at).length + by.x + by.y;
  return pointAtLength(line.chain, Math.min(chainLength(line.chain), Math.max(0, at)));
}

/** Marks notches across the line: press on it, or slide one along; the measure is taken from where the line passes a bust point. */
export const notch: ToolSpec = {
  id: 'notch',
  targets: (scene) => {
    const line = lineOf(scene.work);
    if (!line) return [];
    const marked = notchesOn(scene.work, line.id).map(({ id, at }): ToolTarget => ({
      id: `notch:${id}`,
      kind: 'notch',
      point: pointAtLength(line.chain, at),
      piece: 'front',
      how: 'carry',
      ref: id,
      at,
      removable: true,
    }));
    const fresh = bustPoints(scene).map(({ dart, point }): ToolTarget => {
      const near = nearestOnChain(line.chain, point);
      return {
        id: `new:${dart.id}`,
        kind: 'add',
        point: near.point,
        piece: 'front',
        how: 'carry',
        dart: dart.id,
        at: near.length,
        anywhere: true,
      };
    });
    return [...marked, ...fresh].sort((a, b) => a.at! - b.at!);
  },
  press: (scene, point) => {
    const line = lineOf(scene.work);
    const near = line && nearestOnChain(line.chain, point);
    return near && near.distance <= scene.reach ? { target: 'new', how: 'tap' } : undefined;
  },
  pull: (scene, _grip, point) => {
    const line = lineOf(scene.work);
    return line ? nearestOnChain(line.chain, point).point : point;
  },
  nudge: alongLine,
  propose: (scene, grip) => {
    const line = lineOf(scene.work);
    if (!line) return undefined;
    const at = nearestOnChain(line.chain, grip.at).length / chainLength(line.chain);
    const [kind, old] = grip.target.split(':');
    const id = kind === 'notch' && old !== undefined ? old : nextNotch(scene.work, line.id);
    return { command: { do: 'notch', id, line: line.id, at } };
  },
  remove: (_scene, target) =>
    target.startsWith('notch:') ? { do: 'remove-notch', id: target.slice('notch:'.length) } : undefined,
  readings: (scene, _work, grip) => {
    const line = lineOf(scene.work);
    if (!line || !grip) return [];
    const at = nearestOnChain(line.chain, grip.at).length;
    const feet = bustPoints(scene).map(({ dart, point }) => ({
      dart: dart.id,
      near: nearestOnChain(line.chain, point),
    }));
    const foot = feet.sort((a, b) => Math.abs(a.near.length - at) - Math.abs(b.near.length - at))[0];
    if (!foot) return [];
    const reading: Reading = {
      id: 'along',
      unit: 'mm',
      value: at - foot.near.length,
      piece: 'front',
      from: foot.near.point,
      to: grip.at,
      dart: foot.dart,
    };
    return [reading];
  },
};

/** Takes a notch away. */
export const removeNotch: ToolSpec = {
  id: 'remove-notch',
  targets: (scene) =>
    notch
      .targets(scene)
      .filter((target) => target.kind === 'notch')
      .map((target) => ({ ...target, how: 'tap' })),
  propose: (_scene, grip) => ({ command: { do: 'remove-notch', id: grip.target.slice('notch:'.length) } }),
};
