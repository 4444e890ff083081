import { chainLength, pointAtLength } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { distance } from '../../geometry/point.ts';
import { splineThrough } from '../../geometry/spline.ts';
import type { Point } from '../../geometry/types.ts';
import { isWhole, lineOf } from '../../machines/scene.ts';
import { curveOf } from '../../machines/tools/draw-curve.ts';
import { findEdge } from '../../pattern/outline.ts';
import { anchorInside, anchorPolygon, resolveAnchor } from '../../recipe/anchors.ts';
import type { Anchor, Work } from '../../recipe/types.ts';
import { nameOf } from '../../strings/names.ts';
import { endName } from './edge-place.ts';
import {
  choice,
  length,
  missingNumber,
  number,
  percent,
  text,
  type Field,
  type FormMaker,
  type Values,
} from './form.ts';

const ROWS = 7;
/** The typed curve is followed as if by hand, in steps of this, mm. */
const STEP = 4;
/** An end that is typed lies on its edge already, mm. */
const ON_EDGE = 0.01;

/** The boxes for a line's two ends on edges and the points between them; undefined while there is no paper to draw on. */
function lineFields(work: Work): readonly Field[] | undefined {
  const front = work.pieces.find((piece) => piece.id === 'front');
  if (!front || !work.opened || anchorPolygon(work, 'front').length === 0) return undefined;
  const line = lineOf(work);
  const options = front.parts.flatMap((part) =>
    part.edges
      .filter((edge) => edge.role !== 'dart-leg')
      .map((edge) => ({
        value: edge.id,
        label: `${nameOf(edge.id)}, from the ${endName(part, edge, 'start')}`.replace('the its', 'its'),
      })),
  );
  const endFields = (end: 'start' | 'end', index: 0 | 1, edgeId: string, fallback: number): Field[] => {
    const on = line?.ends[index] ?? edgeId;
    const edge = findEdge(front, on);
    const point = index === 0 ? line?.points[0] : line?.points.at(-1);
    const at =
      edge && point && line?.ends[index]
        ? (100 * nearestOnChain(edge.chain, point).length) / chainLength(edge.chain)
        : fallback;
    return [
      choice(end, end === 'start' ? 'Starts on' : 'Ends on', options, on),
      percent(`${end}At`, 'so far along it', Math.round(at * 10) / 10),
    ];
  };
  const inner = line?.points.slice(1, -1) ?? [];
  return [
    ...endFields('start', 0, 'right/shoulder', 45),
    ...Array.from({ length: Math.max(ROWS, inner.length + 1) }, (_, i): Field[] => [
      {
        ...length(`x${i}`, `Point ${i + 1}: from centre front, + to the wearer's left`),
        value: inner[i]?.x ?? '',
      },
      { ...length(`y${i}`, `Point ${i + 1}: below the bust line, − above`), value: inner[i]?.y ?? '' },
    ]).flat(),
    ...endFields('end', 1, isWhole(front) ? 'left/side-lower' : 'right/side-lower', 50),
  ];
}

/** The points of the filled boxes, ends and all, or what is wrong with them. */
function pointsOf(work: Work, values: Values, fields: readonly Field[]): readonly Anchor[] | string {
  const points: Anchor[] = [end(values, 'start')];
  for (let i = 0; fields.some((field) => field.id === `x${i}`); i++) {
    const x = number(values, `x${i}`);
    const y = number(values, `y${i}`);
    if (Number.isNaN(x) !== Number.isNaN(y)) return `Point ${i + 1}: both of its boxes, or neither.`;
    if (!Number.isNaN(x)) points.push(anchorInside(work, 'front', { x, y }));
  }
  return missingNumber(values, ['startAt', 'endAt'], fields) ?? [...points, end(values, 'end')];
}

function end(values: Values, id: 'start' | 'end'): Anchor {
  const at = number(values, `${id}At`) / 100;
  return { on: text(values, id), at: Math.min(1, Math.max(0, at)) };
}

export const drawLine: FormMaker = (work) => {
  const fields = lineFields(work);
  if (!fields) return [];
  return [
    {
      id: 'draw-line',
      title: lineOf(work) ? 'Draw the line again through these points' : 'Draw the line through these points',
      note: 'Leave the boxes of a point empty to leave it out.',
      fields,
      submit: 'Draw the line',
      build: (values) => {
        const points = pointsOf(work, values, fields);
        return typeof points === 'string' ? points : { do: 'draw-line', line: 'line', points };
      },
    },
  ];
};

export const drawCurve: FormMaker = (work) => {
  const fields = lineFields(work);
  if (!fields) return [];
  return [
    {
      id: 'draw-curve',
      title: 'Draw the line in one stroke by these points',
      note: 'It runs by the points as a hand would and is smoothed to a few curves. Leave the boxes of a point empty to leave it out.',
      fields,
      submit: 'Draw the stroke',
      build: (values) => {
        const points = pointsOf(work, values, fields);
        if (typeof points === 'string') return points;
        const places = points.map((one) => resolveAnchor(work, one, 'front'));
        const stroke = places.includes(undefined) ? [] : strokeBy(places as readonly Point[]);
        return curveOf(work, stroke, ON_EDGE) ?? 'The line is too short to be one.';
      },
    },
  ];
};

/** The way of a hand that draws smoothly by the points. */
function strokeBy(points: readonly Point[]): readonly Point[] {
  if (points.every((p) => distance(p, points[0]!) < 1)) return [];
  const chain = splineThrough(points);
  const whole = chainLength(chain);
  const steps = Math.max(1, Math.round(whole / STEP));
  return Array.from({ length: steps + 1 }, (_, i) => pointAtLength(chain, (i / steps) * whole));
}
