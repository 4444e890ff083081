import * as v from 'valibot';
import { connectAt, uncutFront, withDrawn } from '../lines.ts';
import { refused, withPieces } from '../pieces.ts';
import { base, fraction, id } from '../shapes.ts';
import type { Connect } from '../types.ts';
import { kind } from './kind.ts';

/** Draws the connector from a dart's tip to the line; drawing it again replaces. */
export const connect = kind<Connect>({
  name: 'connect',
  schema: v.strictObject({ ...base('connect'), dart: id, line: id, at: fraction }),
  apply: (work, { dart, line, at }) => {
    const paper = uncutFront(work);
    if ('refused' in paper) return paper;
    const drawn = work.lines.find((l) => l.id === line);
    if (drawn === undefined) return refused('no-such-line', { line });
    const next = connectAt(paper.front, drawn, dart, at);
    return 'refused' in next
      ? next
      : { work: withDrawn(withPieces(work, 'front', next.ok.front), next.ok.drawn) };
  },
});
