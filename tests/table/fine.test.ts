import { describe, expect, it } from 'vitest';
import { Fine, gainAt } from '../../src/lib/table/fine.ts';
import { Track } from '../../src/lib/table/steady.ts';

const EVERY = 1000 / 60;

/** Moves on to the right by so many px at so many px/s; where what is held was led to, and where the hand is. */
function moves(fine: Fine, from: { x: number; t: number }, px: number, speed: number) {
  const count = Math.max(1, Math.round((1000 * px) / speed / EVERY));
  let led = { x: from.x, y: 0 };
  for (let i = 1; i <= count; i++)
    led = fine.go({ x: from.x + (px * i) / count, y: 0, t: from.t + i * EVERY });
  return { led, hand: { x: from.x + px, t: from.t + count * EVERY } };
}
const pressed = { x: 0, y: 0, t: 0 };

describe('what is held goes finely while a finger is slow', () => {
  it('by a third of a slow way, by all of a quick one, and by more the quicker', () => {
    expect(moves(new Fine('touch', pressed), pressed, 12, 30).led.x).toBeCloseTo(4);
    expect(moves(new Fine('touch', pressed), pressed, 120, 400).led.x).toBeCloseTo(120);
    const gains = Array.from({ length: 30 }, (_, i) => gainAt(10 * i));
    expect(gains).toEqual([...gains].sort((a, b) => a - b));
    expect(gains[0]).toBeCloseTo(1 / 3);
    expect(gains.at(-1)).toBe(1);
  });

  it.each(['mouse', 'pen'])('a %s leads straight, however slow', (pointer) => {
    const fine = new Fine(pointer, pressed);
    expect(moves(fine, pressed, 12, 20).led).toMatchObject({ x: 12, y: 0 });
  });

  it('trembles less than the finger does', () => {
    const fine = new Fine('touch', pressed);
    const led = Array.from({ length: 60 }, (_, i) =>
      fine.go({ x: i % 2 === 0 ? 0.6 : -0.6, y: 0, t: (i + 1) * EVERY }),
    );
    // The first samples have no time behind them to be a speed over.
    const settled = led.slice(10).map(({ x }) => x);
    expect(Math.max(...settled) - Math.min(...settled)).toBeLessThan(0.6);
  });

  it('what rested begins to move slowly, however long nothing came', () => {
    const fine = new Fine('touch', pressed);
    expect(fine.go({ x: 3, y: 0, t: 900 }).x).toBeCloseTo(1);
  });

  it('what lags behind is caught up with by a quick way', () => {
    const fine = new Fine('touch', pressed);
    const slow = moves(fine, pressed, 60, 30);
    expect(slow.hand.x - slow.led.x).toBeCloseTo(40);
    const quick = moves(fine, slow.hand, 500, 800);
    expect(quick.hand.x - quick.led.x).toBeLessThan(6);
    expect(quick.hand.x - quick.led.x).toBeGreaterThanOrEqual(0);
  });

  it('where a finger rested, what it holds had its own place', () => {
    const track = new Track('touch', pressed);
    for (let i = 1; i <= 24; i++) track.add({ x: i / 2, y: 0, t: i * EVERY });
    for (let i = 25; i <= 50; i++) track.add({ x: 12, y: 0, t: i * EVERY });
    track.add({ x: 12, y: 8, t: 55 * EVERY });
    const rest = track.rest(55 * EVERY);
    expect(rest).toMatchObject({ x: 12, y: 0 });
    expect(rest.led.x).toBeCloseTo(4);
    expect(rest.led.y).toBe(0);
  });
});
