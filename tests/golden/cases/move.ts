import { chainLength } from '../../../src/lib/geometry/chain.ts';
import { nearestOnChain } from '../../../src/lib/geometry/nearest.ts';
import { chainOf } from '../../../src/lib/recipe/anchors.ts';
import type { Command, Turn } from '../../../src/lib/recipe/types.ts';
import { landmark } from '../../recipe/sample.ts';
import {
  beside,
  both,
  changing,
  drawnBackwards,
  fail,
  pass,
  start,
  unfinished,
  without,
  type Before,
  type Case,
} from '../case.ts';

const WORKING = 'working-darts';
const CONNECT = 'connectors';
const SEPARATE = 'separate';

/** Angle by which the freed part of each side turns to close its dart; the darts open by the block's angle. */
const closing = ({ work }: Before, dart: string): number => {
  const open = work.pieces.flatMap((p) => p.darts).find((d) => d.id === dart)!.residual;
  // The freed part is the one above the right dart, and the one below the left dart: both turn counter-clockwise (y is down).
  return -open;
};
const turning = (change: (turn: Turn, before: Before) => Command | readonly Command[]) =>
  changing('turn', change);
const byShare = (share: number) => turning((c, b) => ({ ...c, by: { angle: share * closing(b, c.dart) } }));

function moves(step: 'first-dart' | 'second-dart', dart: 'right' | 'left'): readonly Case[] {
  const bust = `${dart}/bust-point`;
  const from = dart === 'right' ? ('end' as const) : ('start' as const);
  return [
    start(step, ['dart-closed/slashed']),
    pass(step, 'slash-and-spread'),
    pass(step, 'rest-turned', { variations: { turn: 'rest' } }),
    pass(step, 'typed-angle', { edit: byShare(1) }),
    pass(step, 'typed-angle-to-a-tenth', {
      edit: turning((c, b) => ({
        ...c,
        // A tenth of a degree, as it would be typed.
        by: { angle: Math.round(closing(b, c.dart) * 572.957795) / 572.957795 },
      })),
    }),
    pass(step, 'separated-first', { variations: { separateFirst: true } }),
    pass(step, 'line-drawn-backwards', { earlier: drawnBackwards, edit: ({ own }) => drawnBackwards(own) }),
    pass(step, 'nudged-there', {
      edit: turning((c, b) =>
        [0.5, 0.4, 0.2, -0.1].map((share) => ({ ...c, by: { angle: share * closing(b, c.dart) } })),
      ),
    }),
    pass(step, 'woven-other-figure', { figure: 'F5', fabric: 'woven' }),
    unfinished(step, ['dart-closed/turned'], 'slashed-only', { edit: without((c) => c.do === 'turn') }),
    fail(step, ['dart-closed/slashed'], 'stops-short', {
      causes: ['slash-stops-short'],
      edit: changing('slash', (c) => ({ ...c, past: -6 })),
    }),
    fail(step, ['dart-closed/hinge'], 'cut-through', {
      causes: ['cut-through'],
      edit: changing('slash', (c) => ({ ...c, past: 4 })),
    }),
    fail(step, ['dart-closed/pivot'], 'slipped', {
      causes: ['pivot-slipped'],
      edit: turning((c) => ({ ...c, about: { landmark: bust, dx: 4, dy: 3 } })),
    }),
    fail(step, ['dart-closed/pivot', 'dart-closed/residual'], 'slipped-far', {
      causes: ['pivot-slipped', 'pivot-slipped'],
      edit: turning((c, b) => ({
        ...c,
        about: { landmark: bust, dx: 0, dy: 22 },
        by: { angle: closing(b, c.dart) },
      })),
    }),
    fail(step, ['dart-closed/residual'], 'wrong-way', { causes: ['wrong-way'], edit: byShare(-1) }),
    fail(step, ['dart-closed/residual'], 'wrong-part', {
      causes: ['wrong-part'],
      edit: turning((c, b) => ({ ...c, part: 'rest', by: { angle: closing(b, c.dart) } })),
    }),
    fail(step, ['dart-closed/residual'], 'gap-left', { causes: ['not-closed'], edit: byShare(0.85) }),
    fail(step, ['dart-closed/residual'], 'too-far', { causes: ['closed-too-far'], edit: byShare(1.15) }),
    fail(step, ['dart-closed/end'], 'from-the-other-end', {
      causes: ['other-end'],
      edit: changing('slash', (c) => ({ ...c, from })),
    }),
  ];
}

/** Working darts, connectors, both moves, and cutting apart. */
export const MOVED: readonly Case[] = [
  start(WORKING, ['darts-extended/tip', 'darts-extended/tip']),
  pass(WORKING, 'to-the-bust-points'),
  pass(WORKING, 'a-pencil-line-off', {
    edit: changing('extend-dart', (c) => ({
      ...c,
      to: { landmark: `${c.dart}/bust-point`, dx: 0.8, dy: 0.5 },
    })),
  }),
  pass(WORKING, 'left-first', { edit: ({ own }) => [...own].reverse() }),
  unfinished(WORKING, ['darts-extended/tip'], 'one-only', {
    edit: without((c) => c.do === 'extend-dart' && c.dart === 'left'),
  }),
  fail(WORKING, ['darts-extended/tip', 'darts-extended/tip'], 'sewn-points', {
    causes: ['drawn-to-sewn-point', 'drawn-to-sewn-point'],
    edit: changing('extend-dart', (c) => ({ ...c, to: { landmark: `${c.dart}/sewn-point` } })),
  }),
  fail(WORKING, ['darts-extended/tip'], 'short-of-it', {
    edit: changing(
      'extend-dart',
      (c) => ({ ...c, to: { landmark: 'left/bust-point', dx: 7, dy: 1 } }),
      (c) => c.dart === 'left',
    ),
  }),

  start(CONNECT, ['connectors/foot', 'connectors/foot']),
  pass(CONNECT, 'to-the-nearest-points'),
  pass(CONNECT, 'a-little-beside', {
    edit: changing('connect', (c, { work }) => ({ ...c, at: beside(work, c.dart as 'left', 2) })),
  }),
  pass(CONNECT, 'tip-elsewhere-still-nearest', {
    // The step before went wrong; this one is marked from the learner's own tip.
    earlier: (commands) =>
      commands.map((c) => (c.do === 'extend-dart' ? { ...c, to: { landmark: `${c.dart}/sewn-point` } } : c)),
    edit: changing('connect', (c, { work }) => {
      const line = chainOf(work, 'line')!;
      const tip = landmark(work, `${c.dart}/sewn-point`);
      return { ...c, at: nearestOnChain(line, tip).length / chainLength(line) };
    }),
  }),
  unfinished(CONNECT, ['connectors/foot'], 'one-only', {
    edit: without((c) => c.do === 'connect' && c.dart === 'right'),
  }),
  fail(CONNECT, ['connectors/foot'], 'elsewhere', {
    causes: ['opening-wider'],
    edit: changing(
      'connect',
      (c, { work }) => ({ ...c, at: beside(work, 'right', -25) }),
      (c) => c.dart === 'right',
    ),
  }),
  fail(CONNECT, ['connectors/foot', 'connectors/foot'], 'both-elsewhere', {
    causes: ['opening-wider', 'opening-wider'],
    edit: changing('connect', (c, { work }) => ({ ...c, at: beside(work, c.dart as 'left', 18) })),
  }),

  ...moves('first-dart', 'right'),
  ...moves('second-dart', 'left'),
  start(SEPARATE, ['separated/pieces', 'overlaid/shown', 'overlaid/shown']),
  pass(SEPARATE, 'then-overlaid'),
  pass(SEPARATE, 'separated-before-the-darts', { variations: { separateFirst: true } }),
  pass(SEPARATE, 'rest-turned', { variations: { turn: 'rest' }, figure: 'F3' }),
  pass(SEPARATE, 'moved-about', {
    edit: ({ own }) => [
      ...own,
      { do: 'place', piece: 'upper', dx: 120, dy: -40, angle: 0.4 },
      { do: 'place', piece: 'lower', dx: -30, dy: 90, angle: -1.1 },
    ],
  }),
  pass(SEPARATE, 'with-a-gap-from-before', {
    // A dart that did not close is a fault of its own step; the parts still lie on the block.
    earlier: (commands) =>
      commands.map((c) => (c.do === 'turn' && c.dart === 'right' ? { ...c, by: { angle: -0.3 } } : c)),
  }),
  unfinished(SEPARATE, ['overlaid/shown'], 'one-overlaid', {
    edit: without((c) => c.do === 'overlay' && c.piece === 'upper'),
  }),
  unfinished(SEPARATE, ['overlaid/shown', 'overlaid/shown'], 'not-overlaid', {
    edit: without((c) => c.do === 'overlay'),
  }),
  unfinished(SEPARATE, ['separated/pieces', 'overlaid/shown', 'overlaid/shown'], 'overlaid-first', {
    edit: both(
      without((c) => c.do === 'separate'),
      ({ own }) => own,
    ),
  }),
];
