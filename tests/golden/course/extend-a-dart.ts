import { angleAtSewnPoint, legFromSewnPoint, offARuler, reading } from './readings.ts';
import { fail, pass, start, undone, type Loose } from './case.ts';

const BUST = { landmark: 'right/bust-point' } as const;
const extend = (to: object, dart = 'right/waist-dart'): Loose[] => [{ do: 'extend-dart', dart, to } as Loose];
const TIP = ['darts-extended/tip'];
const READ = ['dart-angle', 'leg-length', 'intake'].map((what) => `readings/${what}`);
/** The waist dart is backed off by 19 mm (ours, 3/4 in; within 1/2 to 3/4 in, memory: Joseph-Armstrong). */
const BACK_OFF = 19;

export const CASES = [
  start('extend', TIP),
  pass('extend', 'to-the-bust-point'),
  pass('extend', 'largest-figure', { figure: 'F5' }),
  pass('extend', 'a-pencil-line-off', { edit: () => extend({ ...BUST, dx: -1, dy: 1.1 }) }),
  pass('extend', 'put-right-later', {
    edit: ({ own }) => [...extend({ landmark: 'right/waist-sewn-point' }), ...own],
  }),
  // The side dart of another form of the block: there is none here, so nothing is drawn.
  undone('extend', 'unfinished-other-dart', { codes: TIP, edit: () => extend(BUST, 'right') }),
  fail('extend', TIP, 'to-the-sewn-point', {
    causes: ['drawn-to-sewn-point'],
    edit: () => extend({ landmark: 'right/waist-sewn-point' }),
  }),
  fail('extend', TIP, 'beside', { edit: () => extend({ ...BUST, dx: 5 }) }),
  fail('extend', TIP, 'beyond', { edit: () => extend({ ...BUST, dy: -8 }) }),
  fail('extend', TIP, 'short-of-it', { edit: () => extend({ ...BUST, dy: 6 }) }),
  fail('extend', TIP, 'far-off', { edit: () => extend({ ...BUST, dx: 30, dy: -120 }) }),

  start('read', READ),
  pass('read', 'to-the-point'),
  pass('read', 'smallest-figure', { figure: 'F1' }),
  pass('read', 'off-a-ruler', { edit: offARuler }),
  // The numbers are of the body, whatever was drawn before.
  pass('read', 'measured-on-the-sewn-dart-to-the-bust-point', { earlier: () => [] }),
  undone('read', 'unfinished-no-leg', {
    codes: ['readings/leg-length'],
    edit: ({ own }) => own.filter((c) => c.do !== 'read' || c.what !== 'leg-length'),
  }),
  fail('read', ['readings/dart-angle'], 'at-sewn-point', {
    causes: ['measured-at-sewn-point'],
    edit: reading('dart-angle', (own) => angleAtSewnPoint(own, BACK_OFF)),
  }),
  fail('read', ['readings/leg-length'], 'from-sewn-point', {
    causes: ['measured-at-sewn-point'],
    edit: reading('leg-length', (own) => legFromSewnPoint(own, BACK_OFF)),
  }),
  fail('read', ['readings/leg-length', 'readings/intake'], 'half-scale', {
    causes: ['scale-mixed', 'scale-mixed'],
    edit: ({ own }) =>
      own.map((c) => (c.do === 'read' && c.what !== 'dart-angle' ? { ...c, value: c.value / 2 } : c)),
  }),
];
