import { drawSlash as draw, sheetAt } from '../../pattern/slash-line.ts';
import { resolveAnchor } from '../anchors.ts';
import { paperFront, resolveOn } from '../paper.ts';
import { lineNamed, slashRecord } from '../slashes.ts';
import { refused, withPieces } from '../pieces.ts';
import { withDrawn } from '../lines.ts';
import type { DrawSlash } from '../types.ts';
import { kind } from './kind.ts';

/** Draws a slash line from an edge to the bust point, or draws it anew until it is cut. */
export const drawSlash = kind<DrawSlash>({
  name: 'draw-slash',
  keys: { slash: 'id', from: 'anchor', via: 'anchor?', to: 'anchor' },
  apply: (work, { slash, from, via, to }) => {
    const paper = paperFront(work);
    if ('refused' in paper) return paper;
    if (lineNamed(work, slash)) return refused('name-taken', { line: slash });
    const start = resolveAnchor(work, from, 'front');
    if (start === undefined) return refused('no-such-place', { point: 1 });
    const edge = 'on' in from ? from.on : undefined;
    const sheet = sheetAt(paper.front, start, edge);
    const middle = via && resolveOn(work, via, sheet);
    const end = resolveOn(work, to, sheet);
    if (via !== undefined && middle === undefined) return refused('no-such-place', { point: 2 });
    if (end === undefined) return refused('no-such-place', { point: via === undefined ? 2 : 3 });
    const drawn = draw(paper.front, slash, { from: start, via: middle, to: end }, edge);
    if ('refused' in drawn) return drawn;
    const next = withPieces(work, 'front', drawn.ok);
    return { work: withDrawn(next, slashRecord(drawn.ok, slash, edge)) };
  },
});
