import { changing, fail, pass, start, unfinished, without, type Case } from '../case.ts';

const READ = 'read-the-block';
const OPEN = 'open-out';
const ALL = [
  ...['bust-point', 'dart-upper', 'dart-lower', 'centre-front', 'neck-point'].map(
    (w) => `landmarks-found/${w}`,
  ),
  ...['dart-angle', 'leg-length', 'intake'].map((w) => `readings/${w}`),
];

/** Reading the block, and opening it out. */
export const BLOCK: readonly Case[] = [
  start(READ, ALL),
  pass(READ, 'on-the-landmarks'),
  pass(READ, 'largest-figure', { figure: 'F5', fabric: 'woven' }),
  pass(READ, 'pins-a-little-off', {
    edit: changing('identify', (c) =>
      'landmark' in c.at
        ? { ...c, at: { ...c.at, dx: 2, dy: -2 } }
        : { ...c, at: { ...c.at, at: 0.31 } as typeof c.at },
    ),
  }),
  pass(READ, 'readings-off-a-ruler', {
    // To half a degree and to a millimetre, as instruments are read.
    edit: changing('read', (c) => ({
      ...c,
      value: c.what === 'dart-angle' ? Math.round(c.value * 114.59156) / 114.59156 : Math.round(c.value),
    })),
  }),
  pass(READ, 'put-right-later', {
    edit: ({ own }) => [{ do: 'identify', what: 'bust-point', at: { landmark: 'right/neck-point' } }, ...own],
  }),
  unfinished(READ, ['readings/intake'], 'no-intake', {
    edit: without((c) => c.do === 'read' && c.what === 'intake'),
  }),
  fail(READ, ['landmarks-found/bust-point'], 'sewn-point', {
    causes: ['sewn-point'],
    edit: changing(
      'identify',
      (c) => ({ ...c, at: { landmark: 'right/sewn-point' } }),
      (c) => c.what === 'bust-point',
    ),
  }),
  fail(READ, ['landmarks-found/dart-upper', 'landmarks-found/dart-lower'], 'legs-swapped', {
    causes: ['other-leg', 'other-leg'],
    edit: changing(
      'identify',
      (c) => ({ ...c, what: c.what === 'dart-upper' ? 'dart-lower' : 'dart-upper' }),
      (c) => c.what.startsWith('dart'),
    ),
  }),
  fail(READ, ['landmarks-found/centre-front'], 'side-seam', {
    edit: changing(
      'identify',
      (c) => ({ ...c, at: { on: 'right/side-lower', at: 0.5 } }),
      (c) => c.what === 'centre-front',
    ),
  }),
  // A corner belongs to two edges: whoever points there has said neither. The top of centre front is the end of the neckline, too.
  fail(READ, ['landmarks-found/centre-front'], 'at-an-end', {
    causes: ['at-an-end'],
    edit: changing(
      'identify',
      (c) => ({ ...c, at: { on: 'centre-front', at: 0 } }),
      (c) => c.what === 'centre-front',
    ),
  }),
  fail(READ, ['landmarks-found/dart-upper', 'landmarks-found/dart-lower'], 'one-corner-for-both', {
    causes: ['at-an-end', 'at-an-end'],
    edit: changing(
      'identify',
      (c) => ({ ...c, at: { landmark: 'right/sewn-point' } }),
      (c) => c.what.startsWith('dart'),
    ),
  }),
  fail(READ, ['landmarks-found/neck-point'], 'shoulder-point', {
    edit: changing(
      'identify',
      (c) => ({ ...c, at: { landmark: 'right/shoulder-point' } }),
      (c) => c.what === 'neck-point',
    ),
  }),
  fail(READ, ['readings/dart-angle'], 'at-sewn-point', {
    causes: ['measured-at-sewn-point'],
    // The drawn angle at the sewn point, 25.4 mm short of the bust point: tan(a/2) = (c/2) / (h − 25.4), h the dart's height.
    edit: changing(
      'read',
      (c, { own }) => {
        const value = (what: string) =>
          own.find((o) => o.do === 'read' && o.what === what) as { value: number };
        const half = value('intake').value / 2;
        const height = Math.sqrt(value('leg-length').value ** 2 - half ** 2);
        return { ...c, value: 2 * Math.atan(half / (height - 25.4)) };
      },
      (c) => c.what === 'dart-angle',
    ),
  }),
  fail(READ, ['readings/leg-length', 'readings/intake'], 'half-scale', {
    causes: ['scale-mixed', 'scale-mixed'],
    edit: changing(
      'read',
      (c) => ({ ...c, value: c.value / 2 }),
      (c) => c.what !== 'dart-angle',
    ),
  }),

  start(OPEN, ['opened-out/mirror']),
  pass(OPEN, 'centre-front'),
  pass(OPEN, 'smallest-figure', { figure: 'F1' }),
  ...['right/side-lower', 'right/shoulder', 'right/side-upper'].map((about) =>
    fail(OPEN, ['opened-out/mirror'], about.replace('right/', ''), {
      causes: ['mirrored-about-other-edge'],
      edit: changing('open-out', (c) => ({ ...c, about })),
    }),
  ),
];
