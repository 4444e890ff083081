import { chainLength } from '../geometry/chain.ts';
import type { Scene } from '../machines/scene.ts';
import type { ToolTarget } from '../machines/tool-spec.ts';
import { formatLength, type Units } from '../strings/units.ts';
import { whereIs } from './targets.ts';

/** What a point or an edge is called where its name is what the step asks for: by its form, its length and where it lies. */
export function nameless(scene: Scene, target: ToolTarget, units: Units): string {
  if (target.kind !== 'edge') return `point, ${whereIs(target.point, units)}`;
  const edge = scene.work.pieces
    .flatMap((piece) => piece.parts.flatMap((part) => part.edges))
    .find((one) => one.id === target.ref);
  const straight = edge?.chain.every((segment) => segment.kind === 'line') ?? true;
  const length = edge ? `${formatLength(chainLength(edge.chain), units)} long, ` : '';
  return `${straight ? 'straight' : 'curved'} edge, ${length}its middle ${whereIs(target.point, units)}`;
}
