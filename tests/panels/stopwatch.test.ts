import { expect, it } from 'vitest';
import { Stopwatch } from '../../src/lib/panels/stopwatch.ts';

it('counts the time at work by step, a long pause as a minute, and begins anew when it is taken', () => {
  let now = 1000;
  const after = (ms: number): void => void (now += ms);
  const watch = new Stopwatch(() => now);
  after(20_000);
  watch.tick('one');
  after(15 * 60_000);
  watch.tick('one');
  after(5_000);
  watch.tick('two');
  after(2_000);
  expect(watch.take('one')).toBe(82);
  after(1_000);
  expect(watch.take('one')).toBe(1);
  expect(watch.take('two')).toBe(5);
});
