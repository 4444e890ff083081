import type { Variant } from '../../lessons/drills/types.ts';
import { COUNTS } from './finishing.ts';
import { dartsOf, edgeOf, EDGES } from './measured.ts';

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;

/** The name of a drill. */
export function title(v: Variant): string {
  const what = capital(dartsOf(v));
  switch (v.drill.exercise) {
    case 'finish':
      return v.goals.length === 0 ? `${what}, backed off and capped` : `${what} to the ${edgeOf(v)}, capped`;
    case 'fullness':
      return `${what} into ${v.filled!.as} at the ${edgeOf(v)}`;
    case 'parallel':
      return `${what} into ${COUNTS[v.row!.count]} parallel darts at the ${edgeOf(v)}`;
    case 'several': {
      const group = v.goals[0]!.place === 'neckline' ? 'rays' : v.row!.step > 0 ? 'graduated darts' : 'darts';
      return `${what} into ${COUNTS[v.row!.count]} ${group} at the ${edgeOf(v)}`;
    }
    case 'line':
      return `${what} into a line beside the bust point`;
    case 'princess':
      return `Princess seam from the ${edgeOf(v)}`;
    default: {
      const goals = v.goals.map((goal) => EDGES[goal.place]).join(' and the ');
      const how = { pivot: ', by the pin', angle: ', by its angle' } as const;
      const method =
        v.drill.exercise === 'pivot' || v.drill.exercise === 'angle' ? how[v.drill.exercise] : '';
      return `${what} to the ${goals}${method}`;
    }
  }
}
