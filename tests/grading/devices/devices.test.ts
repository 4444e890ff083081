import { describe, expect, it } from 'vitest';
import { KINDS } from './kinds.ts';
import { DEVICES, type Device } from './noise.ts';
import { inSum, tried } from './simulate.ts';

/** For each kind and device; the seeds are others than those of the bench. */
const ATTEMPTS = 20;
const FIRST = 2_000_000;

const still: Device = {
  ...DEVICES[0]!,
  whole: false,
  scatter: 0,
  offset: 0,
  fine: 0,
  tremor: 0,
  slip: { towards: 0, sd: 0, ms: 10 },
  wander: 0,
};

describe('the same person with a mouse, a pen and a finger', () => {
  const rows = tried(KINDS, DEVICES, ATTEMPTS, FIRST);
  const [mouse, pen, finger] = inSum(rows) as [number, number, number];
  const [perfect] = inSum(tried(KINDS, [still], ATTEMPTS, FIRST)) as [number];

  it('is accepted alike with each', () => {
    console.table(Object.fromEntries(rows.map(({ kind, accepted }) => [kind, accepted])));
    // With so few attempts the differences err by about two points. The aim is 2 points; see `npm run bench -- f` for what stands.
    expect(Math.abs(mouse - pen)).toBeLessThan(3);
    expect(Math.abs(Math.max(mouse, pen) - finger)).toBeLessThan(4);
  });

  it('is accepted for what is meant: a hand that never errs not always, and more often than most', () => {
    expect(perfect).toBeLessThan(97);
    expect(perfect).toBeGreaterThan(78);
  });
});
