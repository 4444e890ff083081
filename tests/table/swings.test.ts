import { describe, expect, it } from 'vitest';
import { chainLength } from '../../src/lib/geometry/chain.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import type { Command } from '../../src/lib/recipe/types.ts';
import { guides } from '../../src/lib/table/guides.ts';
import { frameAt, scenesOf, totalTime, type Frame } from '../../src/lib/table/replay.ts';
import { BUST, TWO_CUTS, WAIST, WORKING } from '../machines/dart-tables.ts';
import { tableOf } from '../machines/finish-tables.ts';

/** Frames of one command over a table, from its beginning to shortly before it is over. */
function framesOf(before: readonly Command[], command: Command): Frame[] {
  const scenes = scenesOf(tableOf(before), [command]);
  const whole = totalTime(scenes) * 0.7;
  return Array.from({ length: 21 }, (_, i) => frameAt(scenes, (whole * i) / 21, false)!);
}
const angleOf = (matrix: string): number => {
  const [a, b] = matrix.slice(7).split(' ').map(Number);
  return Math.atan2(b!, a!);
};

// How a demonstration looks is the project's own; what stays and what moves follows from the turn.
describe('a demonstration', () => {
  it('of a pivot traces the first half, swings the whole block, and traces the rest', () => {
    const command: Command = {
      do: 'pivot',
      dart: WAIST,
      slash: 'slash',
      from: { on: 'right/armhole', at: 0.5 },
      about: BUST,
      by: { until: 'legs-meet' },
      part: 'freed',
    };
    const frames = framesOf(WORKING, command);
    const lengths = frames.map(({ tracing }) => [
      chainLength(tracing!.first),
      tracing!.second.length === 0 ? 0 : chainLength(tracing!.second),
    ]);
    const angles = frames.map(({ tracing }) => Math.abs(tracing!.angle));
    expect(lengths[0]![0]! + lengths[0]![1]!).toBeLessThan(1);
    for (const [i, [first, second]] of lengths.entries()) {
      // The block does not move while a pencil goes round it.
      if (second! > 0) expect(angles[i]).toBeCloseTo(angles.at(-1)!, 9);
      if (angles[i]! > 0) expect(first).toBeCloseTo(lengths.at(-1)![0]!, 6);
    }
    expect(Math.max(...angles)).toBeGreaterThan(0.3);
    for (const { turning, tracing, work } of frames)
      for (const part of work.pieces.find(({ id }) => id === 'front')!.parts)
        expect(angleOf(turning![part.id]!)).toBeCloseTo(tracing!.angle, 4);
    const drawn = guides({
      ...frames.at(-1)!,
      turning: undefined,
      tracing: frames.at(-1)!.tracing,
      circle: undefined,
    });
    expect(drawn.map(({ key }) => key)).toEqual(['first', 'second', 'pin']);
  });

  it('of a turn into a slash turns what hangs together, over a ghost of where it lay', () => {
    const turn = (into: string, share: number): Command => ({
      do: 'turn',
      dart: WAIST,
      into,
      part: 'freed',
      about: BUST,
      by: { share },
    });
    const frames = framesOf(TWO_CUTS, turn('slash-2', 1));
    const moving = Object.keys(frames[10]!.turning!);
    expect(moving).toHaveLength(2);
    const ghosts = guides({
      ...frames[10]!,
      turning: frames[10]!.turning,
      tracing: undefined,
      circle: undefined,
    });
    expect(ghosts.map(({ stroke }) => stroke)).toEqual(['ghost', 'ghost']);
    expect(Object.keys(framesOf(TWO_CUTS, turn('slash-1', 0.5))[10]!.turning!)).toHaveLength(1);
  });

  it('of a cut along a slash line goes up to the bust point', () => {
    const frames = framesOf([...WORKING, ...TWO_CUTS.slice(1, 2)], {
      do: 'cut-slash',
      slash: 'slash-1',
      past: 0,
    });
    const cut = frames.at(-1)!.cut!;
    const bust = tableOf(WORKING).pieces[0]!.parts[0]!.landmarks[BUST.landmark]!;
    expect(distance(cut.chain.at(-1)!.d, bust)).toBeLessThan(4);
    expect(chainLength(frames[2]!.cut!.chain)).toBeLessThan(chainLength(frames[12]!.cut!.chain));
  });
});
