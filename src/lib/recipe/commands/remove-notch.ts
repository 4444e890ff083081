import * as v from 'valibot';
import { uncutFront, withNotches } from '../lines.ts';
import { refused, withPieces } from '../pieces.ts';
import { base, id } from '../shapes.ts';
import type { RemoveNotch } from '../types.ts';
import { kind } from './kind.ts';

/** Rubs a notch out, as long as nothing is cut. */
export const removeNotch = kind<RemoveNotch>({
  name: 'remove-notch',
  schema: v.strictObject({ ...base('remove-notch'), id }),
  apply: (work, command) => {
    const paper = uncutFront(work);
    if ('refused' in paper) return paper;
    const line = paper.front.parts[0]!.lines.find((l) => l.notches.some((n) => n.id === command.id));
    if (line === undefined) return refused('no-such-notch', { notch: command.id });
    const rest = line.notches.filter((n) => n.id !== command.id);
    return { work: withPieces(work, 'front', withNotches(paper.front, line.id, rest)) };
  },
});
