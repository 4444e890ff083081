import type { Command } from '../../../src/lib/recipe/types.ts';
import { angleAtSewnPoint, offARuler, reading } from './readings.ts';
import { fail, pass, start, undone, type Loose, type Own } from './case.ts';

const FOUND = ['bust-point', 'dart-upper', 'dart-lower', 'centre-front', 'neck-point'].map(
  (what) => `landmarks-found/${what}`,
);
const READ = ['dart-angle', 'leg-length', 'intake'].map((what) => `readings/${what}`);

/** The worked pointing, one thing of it pointed out elsewhere. */
const elsewhere =
  (what: string, at: object) =>
  ({ own }: Own): readonly Loose[] =>
    own.map((c) => (c.do === 'identify' && c.what === what ? ({ ...c, at } as Loose) : c));

/** The side dart is backed off by 25.4 mm (1 in: memory, Joseph-Armstrong). */
const BACK_OFF = 25.4;

export const CASES = [
  start('find', FOUND),
  pass('find', 'on-the-landmarks'),
  pass('find', 'largest-figure', { figure: 'F5' }),
  pass('find', 'pins-a-little-off', {
    edit: ({ own }) =>
      own.map((c) =>
        c.do === 'identify' && 'landmark' in c.at ? { ...c, at: { ...c.at, dx: 2, dy: -3 } } : c,
      ),
  }),
  pass('find', 'put-right-later', {
    edit: ({ own }) => [
      { do: 'identify', what: 'bust-point', at: { landmark: 'right/sewn-point' } } as Loose,
      ...own,
    ],
  }),
  undone('find', 'unfinished-no-neck-point', {
    codes: ['landmarks-found/neck-point'],
    edit: ({ own }) => own.filter((c: Command) => c.do !== 'identify' || c.what !== 'neck-point'),
  }),
  fail('find', ['landmarks-found/bust-point'], 'sewn-point', {
    causes: ['sewn-point'],
    edit: elsewhere('bust-point', { landmark: 'right/sewn-point' }),
  }),
  fail('find', ['landmarks-found/dart-upper', 'landmarks-found/dart-lower'], 'legs-swapped', {
    causes: ['other-leg', 'other-leg'],
    edit: ({ own }) =>
      own.map((c) =>
        c.do === 'identify' && c.what.startsWith('dart')
          ? { ...c, what: c.what === 'dart-upper' ? 'dart-lower' : 'dart-upper' }
          : c,
      ),
  }),
  fail('find', ['landmarks-found/centre-front'], 'side-seam', {
    edit: elsewhere('centre-front', { on: 'right/side-lower', at: 0.5 }),
  }),
  // A corner belongs to two edges: whoever points there has said neither. The foot of centre front is the end of the waist, too.
  fail('find', ['landmarks-found/centre-front'], 'at-an-end', {
    causes: ['at-an-end'],
    edit: elsewhere('centre-front', { on: 'centre-front', at: 1 }),
  }),
  fail('find', ['landmarks-found/dart-upper', 'landmarks-found/dart-lower'], 'one-corner-for-both', {
    causes: ['at-an-end', 'at-an-end'],
    edit: ({ own }) =>
      own.map((c) =>
        c.do === 'identify' && c.what.startsWith('dart')
          ? ({ ...c, at: { landmark: 'right/sewn-point' } } as Loose)
          : c,
      ),
  }),
  fail('find', ['landmarks-found/neck-point'], 'shoulder-point', {
    edit: elsewhere('neck-point', { landmark: 'right/shoulder-point' }),
  }),

  start('read', READ),
  pass('read', 'to-the-point'),
  pass('read', 'smallest-figure', { figure: 'F1' }),
  pass('read', 'off-a-ruler', { edit: offARuler }),
  pass('read', 'without-pointing-out', { earlier: () => [] }),
  undone('read', 'unfinished-no-intake', {
    codes: ['readings/intake'],
    edit: ({ own }) => own.filter((c) => c.do !== 'read' || c.what !== 'intake'),
  }),
  fail('read', ['readings/dart-angle'], 'at-sewn-point', {
    causes: ['measured-at-sewn-point'],
    edit: reading('dart-angle', (own) => angleAtSewnPoint(own, BACK_OFF)),
  }),
  fail('read', ['readings/leg-length', 'readings/intake'], 'half-scale', {
    causes: ['scale-mixed', 'scale-mixed'],
    edit: ({ own }) =>
      own.map((c) => (c.do === 'read' && c.what !== 'dart-angle' ? { ...c, value: c.value / 2 } : c)),
  }),
  fail('read', ['readings/intake'], 'misread', {
    edit: reading('intake', (own) => 1.4 * own('intake')),
  }),
];
