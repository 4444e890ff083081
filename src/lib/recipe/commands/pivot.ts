import { pivot as swing } from '../../pattern/pivot.ts';
import { resolveAnchor } from '../anchors.ts';
import { withDrawn } from '../lines.ts';
import { refused, withPieces, withWork } from '../pieces.ts';
import { paperFront } from '../paper.ts';
import { lineNamed, slashRecord } from '../slashes.ts';
import type { Pivot } from '../types.ts';
import { kind } from './kind.ts';

/** Pins the block, traces, swings and traces on: the dart goes to the mark without a cut. */
export const pivot = kind<Pivot>({
  name: 'pivot',
  keys: {
    dart: 'id',
    slash: 'id',
    from: 'anchor',
    about: 'anchor',
    by: 'turnBy',
    part: ['freed', 'rest'],
  },
  apply: (work, { dart, slash, from, about, by, part }) => {
    const paper = paperFront(work);
    if ('refused' in paper) return paper;
    if (lineNamed(work, slash)) return refused('name-taken', { line: slash });
    const start = resolveAnchor(work, from, 'front');
    if (start === undefined) return refused('no-such-place', { point: 1 });
    const pin = resolveAnchor(work, about, 'front');
    if (pin === undefined) return refused('no-such-place', { point: 2 });
    const edge = 'on' in from ? from.on : undefined;
    const done = swing(paper.front, { dart, slash, from: start, edge, about: pin, by, part });
    if ('refused' in done) return done;
    const { marked, piece, fact } = done.ok;
    const next = withDrawn(withPieces(work, 'front', piece), slashRecord(marked, slash, edge));
    return { work: withWork(next, { turns: [...work.turns, fact] }) };
  },
});
