import { chainLength } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import { slashEdges } from '../../machines/tools/slashes.ts';
import type { Edge, Part, Piece } from '../../pattern/types.ts';
import type { Anchor } from '../../recipe/types.ts';
import { nameOf } from '../../strings/names.ts';
import { formatLength, sizeOf, type Units } from '../../strings/units.ts';
import { choice, length, number, text, type Field, type Option, type Values } from './form.ts';

type Way = 'start' | 'end';

/** What an edge's end is called: the point of the block there, or else which end it is. */
export function endName(part: Part, edge: Edge, way: Way): string {
  const point = way === 'start' ? edge.chain[0]!.a : edge.chain.at(-1)!.d;
  const named = Object.entries(part.landmarks).find(([, p]) => distance(p, point) < 0.01);
  if (named) return nameOf(named[0]).replace(/^(left|right) /, '');
  return way === 'start' ? 'its start' : 'its end';
}

/** The boxes for a place on an edge: how far along it, from which of its ends, and measured at which scale. */
export function placeFields(front: Piece, units: Units): Field[] {
  const options = slashEdges(front).flatMap(({ part, edge }): Option[] => {
    const whole = formatLength(chainLength(edge.chain), units);
    return (['start', 'end'] as const).map((way) => ({
      value: `${edge.id}|${way}`,
      label: `${nameOf(edge.id)} (${whole}), from the ${endName(part, edge, way)}`.replace('the its', 'its'),
    }));
  });
  return [
    { ...choice('from', 'On the', options), keeps: true },
    { ...length('at', 'so far along it'), value: '' },
    // Where all lengths are those of half-scale paper there is nothing to choose.
    ...(sizeOf(units) > 1
      ? []
      : [
          {
            ...choice('scale', 'measured', [
              { value: 'full', label: 'at full size' },
              { value: 'half', label: 'at half scale' },
            ]),
            keeps: true,
          } as const,
        ]),
  ];
}

/** The place that was typed as an anchor, or what is wrong with it. */
export function placeTyped(front: Piece, values: Values, units: Units): Anchor | string {
  const [id, way] = text(values, 'from').split('|');
  const edge = slashEdges(front).find((one) => one.edge.id === id)?.edge;
  if (!edge) return 'On the: an edge is expected.';
  const whole = chainLength(edge.chain);
  const mm = number(values, 'at') * (text(values, 'scale') === 'half' ? 2 : 1);
  if (!Number.isFinite(mm)) return 'So far along it: a number is expected.';
  if (mm < 0 || mm > whole) return `The edge is ${formatLength(whole, units)} long.`;
  return { on: edge.id, at: (way === 'end' ? whole - mm : mm) / whole };
}
