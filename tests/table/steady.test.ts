import { describe, expect, it } from 'vitest';
import { graspedAt, snapReach } from '../../src/lib/table/grasp.ts';
import type { Sample } from '../../src/lib/table/fine.ts';
import { Track } from '../../src/lib/table/steady.ts';

/** A pointer that goes from the left to 100 px in 300 ms, rests as long, and slips down by so much in the last 60 ms. */
function pulled(pointer: string, slip: number, rests = 300): { track: Track; end: number } {
  const track = new Track(pointer, { x: 0, y: 0, t: 0 });
  const add = (x: number, y: number, t: number): void => track.add({ x, y, t } satisfies Sample);
  for (let t = 20; t <= 300; t += 20) add(t / 3, 0, t);
  for (let t = 320; t <= 300 + rests; t += 20) add(100, 0, t);
  for (let t = 20; t <= 60; t += 20) add(100, (slip * t) / 60, 300 + rests + t);
  return { track, end: 300 + rests + 60 };
}

describe('a hand is steadied', () => {
  it.each([
    ['touch', 10],
    ['pen', 4],
    ['mouse', 1],
  ])('where it rested counts, not how a %s was lifted', (pointer, slip) => {
    const { track, end } = pulled(pointer, slip);
    expect(track.rest(end)).toMatchObject({ x: 100, y: 0 });
    expect(track.slipped(end)).toBe(true);
  });

  it.each([
    ['touch', 30],
    ['pen', 10],
    ['mouse', 5],
  ])('a %s that goes on farther than a slip is taken at its word', (pointer, way) => {
    const { track, end } = pulled(pointer, way);
    expect(track.rest(end)).toMatchObject({ x: 100, y: way });
  });

  it('a hand that never rested is taken where it came to', () => {
    const { track, end } = pulled('touch', 8, 0);
    expect(track.rest(end)).toMatchObject({ x: 100, y: 8 });
  });

  it('a long press that only rolls has stayed; one that went away and came back has not', () => {
    const rolled = new Track('touch', { x: 50, y: 50, t: 0 });
    rolled.add({ x: 50, y: 50, t: 300 });
    rolled.add({ x: 50, y: 56, t: 380 });
    expect(rolled.slow(380)).toBe(true);
    expect(rolled.stayed(380, 9)).toBe(true);
    const away = new Track('touch', { x: 50, y: 50, t: 0 });
    away.add({ x: 90, y: 50, t: 200 });
    away.add({ x: 50, y: 50, t: 600 });
    away.add({ x: 50, y: 50, t: 900 });
    expect(away.stayed(900, 9)).toBe(false);
  });

  it('a finger takes hold from farther off than a mouse, and of what is nearest', () => {
    const handles = [{ at: { x: 0, y: 0 } }, { at: { x: 40, y: 0 } }];
    expect(graspedAt(handles, { x: -25, y: 0 }, 'mouse')).toBeUndefined();
    expect(graspedAt(handles, { x: -25, y: 0 }, 'touch')).toBe(handles[0]);
    expect(graspedAt(handles, { x: 25, y: 0 }, 'touch')).toBe(handles[1]);
  });

  it('beside the handle of a whole edge a press means the place that was pressed', () => {
    const handles = [{ at: { x: 0, y: 0 }, target: { anywhere: true as const } }, { at: { x: 40, y: 0 } }];
    expect(graspedAt(handles, { x: 5, y: 0 }, 'touch')).toBe(handles[0]);
    expect(graspedAt(handles, { x: 9, y: 0 }, 'touch')).toBe(handles[0]);
    expect(graspedAt(handles, { x: 9, y: 0 }, 'mouse')).toBeUndefined();
    expect(graspedAt(handles, { x: 0, y: 15 }, 'touch')).toBeUndefined();
    // The other handles are there to be taken hold of, and leave room for a new place between.
    expect(graspedAt(handles, { x: 23, y: 0 }, 'touch')).toBe(handles[1]);
    expect(graspedAt(handles, { x: 19, y: 0 }, 'touch')).toBeUndefined();
  });

  it('what is snapped to is never far off in mm, but for a line in one stroke', () => {
    expect(snapReach(2)).toBeCloseTo(5.5);
    expect(snapReach(0.6)).toBe(6);
    expect(snapReach(0.6, true)).toBeCloseTo(11 / 0.6);
  });
});
