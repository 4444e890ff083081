import { extendDart as extend } from '../../pattern/extend.ts';
import { findDart, partOf } from '../../pattern/outline.ts';
import { connectors } from '../late-connectors.ts';
import { refused, withPieces } from '../pieces.ts';
import { drawnFront, resolveOn } from '../paper.ts';
import type { ExtendDart } from '../types.ts';
import { kind } from './kind.ts';

/** Draws a dart's legs to a point; a connector that began at its old tip is drawn from the new one, where that is possible. */
export const extendDart = kind<ExtendDart>({
  name: 'extend-dart',
  keys: { dart: 'id', to: 'anchor' },
  apply: (work, { dart, to }) => {
    const paper = drawnFront(work);
    if ('refused' in paper) return paper;
    const leg = findDart(paper.front, dart)?.upper;
    const point = resolveOn(work, to, leg === undefined ? undefined : partOf(paper.front, leg));
    if (point === undefined) return refused('no-such-place');
    const extended = extend(paper.front, dart, point);
    if ('refused' in extended) return extended;
    const next = withPieces(work, 'front', extended.ok);
    const line = work.lines.find((l) => Object.hasOwn(l.feet, dart));
    if (line === undefined) return { work: next };
    // What drew the line and the connector knows how to draw it again.
    return { work: connectors.again!(next, paper.front, dart, line) };
  },
});
