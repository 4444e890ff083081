import type { Anchor } from '../../../src/lib/recipe/types.ts';
import { anchorInside } from '../../../src/lib/recipe/anchors.ts';
import { landmark } from '../../recipe/sample.ts';
import { gable, inOneStroke } from '../support/one-stroke.ts';
import {
  beside,
  both,
  changing,
  fail,
  pass,
  start,
  unfinished,
  without,
  type Before,
  type Case,
} from '../case.ts';

const LINE = 'style-line';
const NOTCH = 'notches';

type Points = readonly Anchor[];
const line = (change: (points: Points, before: Before) => Points) =>
  changing('draw-line', (c, before) => ({ ...c, points: change(c.points, before) }));
const swapped = (points: Points, i: number, by: Anchor): Points => points.map((p, k) => (k === i ? by : p));
const near = (side: string, dx: number, dy: number): Anchor => ({ landmark: `${side}/bust-point`, dx, dy });

/** Notches at these distances from the feet: right, then left. */
const notches =
  (right: readonly number[], left: readonly number[]) =>
  ({ work }: Before) =>
    [...right.map((mm) => beside(work, 'right', mm)), ...left.map((mm) => beside(work, 'left', mm))].map(
      (at, i) => ({
        do: 'notch' as const,
        id: `n${i + 1}`,
        line: 'line',
        at,
      }),
    );

const FEET = ['notches-placed/before-foot', 'notches-placed/after-foot'];

/** Drawing the line, and its notches. */
export const DRAWN: readonly Case[] = [
  start(LINE, ['line-ends/drawn']),
  pass(LINE, 'five-points'),
  pass(LINE, 'woven-other-figure', { figure: 'F4', fabric: 'woven' }),
  pass(LINE, 'as-near-as-allowed', { variations: { d1: 10.1, d2: 10.1 } }),
  pass(LINE, 'as-far-as-allowed', { variations: { d1: 24.9, d2: 24.9 } }),
  pass(LINE, 'near-the-neck-low-at-the-side', { variations: { shoulder: 0.2, side: 0.9 } }),
  pass(LINE, 'from-side-to-shoulder', { edit: line((points) => [...points].reverse()) }),
  pass(LINE, 'drawn-twice', {
    edit: ({ own }) => [
      { do: 'draw-line', line: 'line', points: [near('right', 60, 20), near('left', 0, 60)] },
      ...own,
    ],
  }),
  pass(LINE, 'in-one-stroke', { edit: inOneStroke() }),
  pass(LINE, 'in-one-stroke-woven-other-figure', { figure: 'F5', fabric: 'woven', edit: inOneStroke() }),
  pass(LINE, 'in-one-stroke-then-shaped', {
    edit: (before) => [...inOneStroke(gable(0.3, 0.7, 30))(before), ...before.own],
  }),
  fail(LINE, ['line-shape/kinks', 'line-shape/kink', 'line-shape/radius'], 'in-one-stroke', {
    edit: inOneStroke(gable(0.46, 0.62, 60)),
  }),
  fail(LINE, ['line-ends/end'], 'stops-short', {
    causes: ['stops-short'],
    edit: line((points, { work }) => {
      const at = landmark(work, 'left/side-waist');
      return swapped(points, 4, anchorInside(work, 'front', { x: at.x - 12, y: at.y - 60 }));
    }),
  }),
  fail(LINE, ['line-ends/start'], 'on-the-neckline', {
    causes: ['other-edge'],
    edit: line((points) => swapped(points, 0, { on: 'right/neckline', at: 0.4 })),
  }),
  fail(LINE, ['line-ends/end', 'line-shape/meets-dart'], 'above-the-dart', {
    causes: ['above-dart'],
    edit: line((points) => swapped(points, 4, { on: 'left/side-upper', at: 0.5 })),
  }),
  fail(LINE, ['line-shape/crosses-itself', 'line-shape/radius'], '', {
    // A loop between the two bust points.
    edit: line((points) => [
      ...points.slice(0, 2),
      ...[near('right', 95, 0), near('right', 105, 55), near('right', 60, 65), near('right', 62, 10)],
      ...[near('right', 85, -25), ...points.slice(3)],
    ]),
  }),
  fail(LINE, ['line-shape/inside', 'line-shape/radius', 'line-passes/growth'], 'above-the-neckline', {
    causes: ['hooked'],
    edit: line((points) => [
      points[0]!,
      near('right', 60, -225),
      near('right', 50, -120),
      ...points.slice(1),
    ]),
  }),
  fail(LINE, ['line-shape/radius'], 'kinked', {
    edit: line((points) => [
      ...points.slice(0, 2),
      near('right', 60, 10),
      near('right', 64, 22),
      ...points.slice(3),
    ]),
  }),
  fail(LINE, ['line-passes/distance'], 'too-far', { variations: { d1: 32, d2: 17 } }),
  fail(LINE, ['line-passes/distance'], 'too-near', { variations: { d1: 17, d2: 6 } }),
  fail(LINE, ['line-passes/side'], 'outside-b1', {
    edit: line((points) => swapped(points, 1, near('right', -24, 4))),
  }),
  fail(LINE, ['line-passes/growth', 'line-shape/radius'], 'hooked', {
    causes: ['hooked'],
    edit: line((points) => [
      points[0]!,
      near('right', -14, -122),
      near('right', 30, -130),
      near('right', 66, -110),
      near('right', 50, -60),
      ...points.slice(1),
    ]),
  }),

  start(NOTCH, [...FEET, ...FEET]),
  pass(NOTCH, 'four'),
  pass(NOTCH, 'five', { edit: notches([-35, 45, 90], [-40, 33]) }),
  pass(NOTCH, 'moved-and-taken-away', {
    edit: (before) => [
      { do: 'notch', id: 'n9', line: 'line', at: 0.5 },
      ...before.own,
      { do: 'notch', id: 'n1', line: 'line', at: beside(before.work, 'right', -48) },
      { do: 'remove-notch', id: 'n9' },
    ],
  }),
  pass(NOTCH, 'in-any-order', { edit: ({ own }) => [...own].reverse() }),
  unfinished(NOTCH, ['notches-placed/line'], 'no-line', {
    earlier: (commands) => commands.filter((c) => c.do !== 'draw-line'),
  }),
  unfinished(NOTCH, FEET, 'one-foot-without', { edit: notches([-35, 45], []) }),
  fail(NOTCH, ['notches-placed/after-foot'], 'one-side-only', {
    causes: ['one-side-only'],
    edit: notches([-35, 45], [-40]),
  }),
  fail(NOTCH, ['notches-placed/before-foot'], 'too-near', { edit: notches([-15, 45], [-40, 33]) }),
  fail(NOTCH, ['notches-placed/after-foot'], 'too-far', { edit: notches([-35, 45], [-40, 66]) }),
  fail(NOTCH, ['notches-placed/symmetric', 'notches-placed/count'], '', {
    // Four notches whose distances from the two ends are the same in pairs.
    edit: (before) => {
      const [a, b] = [beside(before.work, 'right', -40), beside(before.work, 'right', 40)];
      const [c, d] = [beside(before.work, 'left', -38), beside(before.work, 'left', 36)];
      return [a, b, c, d, 1 - a, 1 - b, 1 - c, 1 - d].map((at, i) => ({
        do: 'notch',
        id: `n${i + 1}`,
        line: 'line',
        at,
      }));
    },
  }),
  fail(NOTCH, ['notches-placed/count'], '', { edit: notches([-45, -35, 35, 44, 60], [-48, -38, 33, 42]) }),
  fail(NOTCH, ['notches-placed/after-cutting', ...FEET], '', {
    causes: ['too-late', 'too-late'],
    edit: both(
      without(() => false),
      ({ own }) => [...own.slice(0, 2), { do: 'separate', line: 'line' }, ...own.slice(2)],
    ),
  }),
];
