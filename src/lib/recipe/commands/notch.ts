import * as v from 'valibot';
import { chainLength } from '../../geometry/chain.ts';
import { innerLine, uncutFront, withNotches } from '../lines.ts';
import { refused, withPieces } from '../pieces.ts';
import { base, fraction, id } from '../shapes.ts';
import type { MarkNotch } from '../types.ts';
import { kind } from './kind.ts';

/** Marks a notch across the line, or moves the one with that id. */
export const notch = kind<MarkNotch>({
  name: 'notch',
  schema: v.strictObject({ ...base('notch'), id, line: id, at: fraction }),
  apply: (work, command) => {
    const paper = uncutFront(work);
    if ('refused' in paper) return paper;
    const line = innerLine(paper.front, command.line);
    if (line === undefined || line.kind !== 'style-line')
      return refused('no-such-line', { line: command.line });
    const others = line.notches.filter((n) => n.id !== command.id);
    const at = command.at * chainLength(line.chain);
    const front = withNotches(paper.front, command.line, [...others, { id: command.id, at }]);
    return { work: withPieces(work, 'front', front) };
  },
});
