import * as v from 'valibot';
import { chainLength } from '../../geometry/chain.ts';
import { extendDart as extend } from '../../pattern/extend.ts';
import { resolveAnchor } from '../anchors.ts';
import { connectAt, uncutFront, withDrawn, withoutConnector } from '../lines.ts';
import { refused, withPieces } from '../pieces.ts';
import { anchor, base, id } from '../shapes.ts';
import type { ExtendDart } from '../types.ts';
import { kind } from './kind.ts';

/** Draws a dart's legs to a point; connectors that begin at its old tip are drawn from the new one. */
export const extendDart = kind<ExtendDart>({
  name: 'extend-dart',
  schema: v.strictObject({ ...base('extend-dart'), dart: id, to: anchor }),
  apply: (work, { dart, to }) => {
    const paper = uncutFront(work);
    if ('refused' in paper) return paper;
    const point = resolveAnchor(work, to, 'front');
    if (point === undefined) return refused('no-such-place');
    const line = work.lines.find((l) => Object.hasOwn(l.feet, dart));
    if (line === undefined) {
      const plain = extend(paper.front, dart, point);
      return 'refused' in plain ? plain : { work: withPieces(work, 'front', plain.ok) };
    }
    const clean = withoutConnector(paper.front, line, dart);
    const extended = extend(clean.front, dart, point);
    if ('refused' in extended) return extended;
    const again = connectAt(extended.ok, clean.drawn, dart, line.feet[dart]!.at / chainLength(line.chain));
    const { front, drawn } = 'ok' in again ? again.ok : { front: extended.ok, drawn: clean.drawn };
    return { work: withDrawn(withPieces(work, 'front', front), drawn) };
  },
});
