import { frontOf, lineOf, middleOf } from '../scene.ts';
import type { ToolSpec } from '../tool-spec.ts';

/** Cuts the rest of the line; the front comes apart. */
export const separate: ToolSpec = {
  id: 'separate',
  acts: ({ work }) => {
    const line = lineOf(work);
    return line && frontOf(work) ? [{ id: 'separate', command: { do: 'separate', line: line.id } }] : [];
  },
  targets: ({ work }) => {
    const line = lineOf(work);
    if (!line || !frontOf(work)) return [];
    return [
      {
        id: `line:${line.id}`,
        kind: 'line',
        point: middleOf(line.chain),
        piece: 'front',
        how: 'tap',
        ref: line.id,
      },
    ];
  },
  propose: (scene) => {
    const line = lineOf(scene.work);
    return line && { command: { do: 'separate', line: line.id } };
  },
};
