import * as v from 'valibot';
import { chainLength } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { splineThrough } from '../../geometry/spline.ts';
import type { Point } from '../../geometry/types.ts';
import { outlineOf } from '../../pattern/outline.ts';
import { addLine } from '../../pattern/style-line.ts';
import type { Piece } from '../../pattern/types.ts';
import { resolveAnchor } from '../anchors.ts';
import { connectAt, innerLine, uncutFront, withDrawn, withLines, withNotches } from '../lines.ts';
import { refused, withPieces } from '../pieces.ts';
import { LIMITS, anchor, base, id } from '../shapes.ts';
import type { Anchor, DrawLine, DrawnLine } from '../types.ts';
import { kind } from './kind.ts';

/** An end that was not snapped still lies on an edge when it is this near to one, mm. */
const ON_EDGE = 1e-6;

/**
 * Draws the style line, or draws it anew: its notches and connectors then stay at their fractions of its length, and a
 * connector that no longer can be drawn is left out.
 */
export const drawLine = kind<DrawLine>({
  name: 'draw-line',
  schema: v.strictObject({
    ...base('draw-line'),
    line: id,
    points: v.pipe(v.array(anchor), v.minLength(2), v.maxLength(LIMITS.linePoints)),
  }),
  apply: (work, { line, points: anchors }) => {
    const paper = uncutFront(work);
    if ('refused' in paper) return paper;
    const points: Point[] = [];
    for (const a of anchors) {
      const point = resolveAnchor(work, a, 'front');
      if (point === undefined) return refused('no-such-place', { point: points.length + 1 });
      points.push(point);
    }
    const old = work.lines.find((l) => l.id === line);
    const oldNotches = innerLine(paper.front, line)?.notches ?? [];
    const clean =
      old === undefined ? paper.front : withLines(paper.front, (all) => all.filter((l) => !ofLine(l, old)));
    if (innerLine(clean, line) !== undefined) return refused('name-taken', { line });

    const chain = splineThrough(points);
    const drawnOn = addLine(clean, line, chain);
    if ('refused' in drawnOn) return drawnOn;
    const ends = [
      endOn(clean, anchors[0]!, points[0]!),
      endOn(clean, anchors.at(-1)!, points.at(-1)!),
    ] as const;
    let front = drawnOn.ok;
    let drawn: DrawnLine = { id: line, chain, points, ends, feet: {} };
    if (old !== undefined) {
      const k = chainLength(chain) / chainLength(old.chain);
      front = withNotches(
        front,
        line,
        oldNotches.map((notch) => ({ ...notch, at: notch.at * k })),
      );
      for (const dart of Object.keys(old.feet)) {
        const again = connectAt(front, drawn, dart, old.feet[dart]!.at / chainLength(old.chain));
        if ('ok' in again) ({ front, drawn } = again.ok);
      }
    }
    return { work: withDrawn(withPieces(work, 'front', front), drawn) };
  },
});

/** The line itself, and the connectors that run to it. */
function ofLine(l: { id: string; kind: string; dart?: string }, old: DrawnLine): boolean {
  return (
    l.id === old.id || (l.kind === 'connector' && l.dart !== undefined && Object.hasOwn(old.feet, l.dart))
  );
}

/** Id of the outline edge on which an end of the line lies. */
function endOn(front: Piece, anchor: Anchor, point: Point): string | undefined {
  const outline = outlineOf(front);
  if ('on' in anchor && outline.some((edge) => edge.id === anchor.on)) return anchor.on;
  return outline.find((edge) => nearestOnChain(edge.chain, point).distance <= ON_EDGE)?.id;
}
