import { describe, expect, it } from 'vitest';
import { pointAtLength } from '../../src/lib/geometry/chain.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import type { Point } from '../../src/lib/geometry/types.ts';
import { TOOLS } from '../../src/lib/machines/tools/index.ts';
import { replayByStep } from '../../src/lib/recipe/replay.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Command, Work } from '../../src/lib/recipe/types.ts';
import { landmark, sampleAttempt, STEPS } from '../recipe/sample.ts';
import { Hand } from './hand.ts';

const steps = replayByStep(sampleAttempt('F2', 'knit'), STEPS);
const before = (id: (typeof STEPS)[number]): Work => steps.get(id)!.before;
const last = (hand: Hand): Command => hand.commands.at(-1)!;

describe('every tool', () => {
  const drawn = before('notches');

  it('does nothing on a press that neither moves nor picks', () => {
    const hand = new Hand(drawn).take('draw-line');
    hand.down({ x: 0, y: 200 }).up();
    expect(hand.state).toBe('idle');
    expect(hand.commands).toEqual([]);
  });

  it('keeps a press that strays less than the threshold a press', () => {
    const hand = new Hand(drawn).take('draw-line');
    const { point } = hand.target('point:2');
    hand.down(point, 'point:2').move({ x: point.x + 1.5, y: point.y });
    expect(hand.state).toBe('pointing');
    hand.move({ x: point.x + 4, y: point.y });
    expect(hand.state).toBe('dragging');
  });

  it('gives exactly one command for a drag, whatever happened on the way', () => {
    const hand = new Hand(drawn).take('draw-line');
    const { point } = hand.target('point:2');
    hand.down(point, 'point:2');
    for (let i = 1; i <= 50; i++) hand.move({ x: point.x + i, y: point.y - i / 2 });
    hand.up();
    expect(hand.commands).toHaveLength(1);
    expect(hand.work.lines[0]!.points[2]!.x).toBeCloseTo(point.x + 50, 6);
  });

  it.each(['cancel', 'escape'] as const)('leaves the work as it was on %s in the middle of a drag', (how) => {
    const hand = new Hand(drawn).take('draw-line');
    const { point } = hand.target('point:2');
    hand.down(point, 'point:2').move({ x: point.x + 30, y: point.y });
    hand[how]();
    expect(hand.state).toBe('idle');
    expect(hand.context.preview).toBeUndefined();
    hand.up();
    expect(hand.commands).toEqual([]);
    expect(hand.work).toBe(drawn);
  });

  it('shows in the preview exactly what it stores', () => {
    const hand = new Hand(drawn).take('draw-line');
    const { point } = hand.target('point:1');
    hand.down(point, 'point:1').move({ x: point.x + 7, y: point.y + 3 });
    const preview = hand.context.preview;
    hand.up();
    expect(hand.work).toEqual(preview);
  });

  it('lets a target be picked, and put down at a second press', () => {
    const hand = new Hand(drawn).take('draw-line');
    const { point } = hand.target('point:2');
    hand.down(point, 'point:2').up();
    expect(hand.state).toBe('carrying');
    hand
      .move({ x: point.x + 10, y: point.y })
      .down({ x: point.x + 12, y: point.y + 2 })
      .up();
    expect(hand.commands).toHaveLength(1);
    expect(hand.work.lines[0]!.points[2]!.x).toBeCloseTo(point.x + 12, 6);
  });

  it('lets a target be picked, nudged and put down by keys alone', () => {
    const hand = new Hand(drawn).take('draw-line');
    const { point } = hand.target('point:2');
    hand.pick('point:2').nudge('point:2', 2, 0, 3).nudge('point:2', 0, -20).pick('point:2');
    expect(hand.state).toBe('idle');
    expect(hand.commands).toHaveLength(1);
    const now = hand.work.lines[0]!.points[2]!;
    expect([now.x, now.y]).toEqual([expect.closeTo(point.x + 6, 6), expect.closeTo(point.y - 20, 6)]);
  });

  it('starts afresh when the work changes under a gesture', () => {
    const hand = new Hand(drawn).take('draw-line');
    hand.pick('point:2');
    hand.take('draw-line');
    expect(hand.state).toBe('idle');
  });
});

describe('identify', () => {
  it('says what a pressed landmark is, and goes on to what is asked next', () => {
    const hand = new Hand(startWork({ figure: 'F1' })).take('identify');
    const { point } = hand.target('landmark:right/bust-point');
    hand.down(point, 'landmark:right/bust-point').up();
    expect(last(hand)).toEqual({ do: 'identify', what: 'bust-point', at: { landmark: 'right/bust-point' } });
    hand.pick('edge:right/dart-upper');
    expect(last(hand)).toMatchObject({ what: 'dart-upper', at: { on: 'right/dart-upper' } });
  });

  it('takes a press beside all points for what it is: no landmark', () => {
    const hand = new Hand(startWork({ figure: 'F1' })).take('identify');
    hand.down({ x: -60, y: -90 }).up();
    expect(hand.commands).toHaveLength(1);
    expect(last(hand)).not.toMatchObject({ at: { landmark: 'right/bust-point', dx: 0 } });
  });
});

describe('read', () => {
  it('measures leg, intake and angle without a command', () => {
    // Read back from the work itself: the ruler must show what the landmarks are apart.
    const work = startWork({ figure: 'F1' });
    const hand = new Hand(work).take('read');
    const [bust, upper, lower] = ['bust-point', 'dart-upper-end', 'dart-lower-end'].map(
      (id) => `right/${id}`,
    ) as [string, string, string];
    hand.pick(bust).pick(upper).pick(bust).pick(lower);
    expect(hand.commands).toEqual([]);
    const { scene } = hand.context;
    const spec = scene.options['rules'];
    expect(spec).toBe(`${bust}>${upper} ${bust}>${lower}`);
  });

  it('while a third ruler is pulled, the first is seen to be the one that is taken up', () => {
    const hand = new Hand(startWork({ figure: 'F1' })).take('read');
    const named = () => {
      const { scene, grip } = hand.context;
      return TOOLS.read.readings!(scene, hand.work, grip).map(({ id }) => id);
    };
    const [bust, upper, lower] = ['right/bust-point', 'right/dart-upper-end', 'right/dart-lower-end'];
    hand.pick(bust!).pick(upper!);
    expect(named()).toEqual(['rule-0']);
    hand.pick(bust!).pick(lower!);
    expect(named()).toEqual(['rule-0', 'rule-1', 'angle']);
    hand.pick(upper!).nudge(upper!, 0, 4);
    expect(named()).toEqual(['taken-up', 'rule-0', 'rule-1']);
    hand.escape();
    expect(named()).toEqual(['rule-0', 'rule-1', 'angle']);
  });
});

describe('draw-line', () => {
  it('lays the first line from edge to edge in one pull', () => {
    const hand = new Hand(before('style-line')).take('draw-line');
    const from = hand.target('start:right/shoulder').point;
    const to = hand.target('start:left/side-lower').point;
    hand
      .down(from, 'start:right/shoulder')
      .move({ x: to.x + 2, y: to.y + 1 })
      .up();
    expect(hand.work.lines[0]!.ends).toEqual(['right/shoulder', 'left/side-lower']);
    expect(hand.commands).toHaveLength(1);
  });

  it('takes an end to its edge from half an inch off, pressed or lifted, and from no farther', () => {
    for (const [off, ends] of [
      [11, ['right/shoulder', 'left/side-lower']],
      [14, [undefined, undefined]],
    ] as const) {
      const hand = new Hand(before('style-line')).take('draw-line');
      const from = hand.target('start:right/shoulder').point;
      const to = hand.target('start:left/side-lower').point;
      // Straight off the shoulder, which falls outwards by some 21 degrees, and off the side seam, which is upright.
      hand
        .down({ x: from.x + off * 0.36, y: from.y + off * 0.93 }, undefined, { piece: 'front' })
        .move({ x: to.x - off, y: to.y })
        .up();
      const { points, ends: found } = hand.work.lines[0]!;
      expect([found[0], found[1]]).toEqual(ends);
      expect(points).toHaveLength(2);
    }
  });

  it('lays the same line by keys: pick the start, Enter on the end', () => {
    const hand = new Hand(before('style-line')).take('draw-line');
    hand.pick('start:right/shoulder').pick('start:left/side-lower');
    expect(hand.work.lines[0]!.ends).toEqual(['right/shoulder', 'left/side-lower']);
  });

  it('adds a point between two, and takes one away', () => {
    const hand = new Hand(before('notches')).take('draw-line');
    const count = hand.work.lines[0]!.points.length;
    hand.pick('add:1').nudge('add:1', 0, 2, 2).pick('add:1');
    expect(hand.work.lines[0]!.points).toHaveLength(count + 1);
    hand.remove('point:2');
    expect(hand.work.lines[0]!.points).toHaveLength(count);
    hand.remove('point:0');
    expect(hand.work.lines[0]!.points).toHaveLength(count);
  });

  it('keeps an end on its edge when keys slide it', () => {
    const hand = new Hand(before('notches')).take('draw-line');
    hand.nudge('point:0', 2, 0, 4).pick('point:0');
    expect(hand.work.lines[0]!.ends[0]).toBe('right/shoulder');
  });
});

describe('slash', () => {
  const cut = before('first-dart');

  it('stops at the tip although the hand ran a little past it', () => {
    const hand = new Hand(cut).take('slash');
    const tip = hand.target('tip:right').point;
    hand.drag('cut:right', { x: tip.x, y: tip.y + 2 });
    expect(last(hand)).toMatchObject({ do: 'slash', dart: 'right', from: 'start', past: 0 });
  });

  it('gives nothing when let go on the line, before the connector', () => {
    const hand = new Hand(cut).take('slash');
    const { point } = hand.target('cut:right');
    hand.drag('cut:right', { x: point.x, y: point.y + 60 });
    expect(hand.commands).toEqual([]);
  });

  it('cuts through when it is meant: past is then more than nothing', () => {
    const hand = new Hand(cut).take('slash');
    hand.pick('tip:right').nudge('tip:right', 2, 0, 2).pick('tip:right');
    expect(last(hand)).toMatchObject({ do: 'slash', past: expect.closeTo(4, 6) });
  });
});

describe('turn', () => {
  const slashed = (): Hand => {
    const hand = new Hand(before('first-dart')).take('slash');
    return hand.pick('cut:right').pick('tip:right').take('turn');
  };

  it('stores the wish when the legs are brought near each other', () => {
    const hand = slashed();
    const other = hand.target('turn:right:rest').point;
    hand.drag('turn:right:freed', { x: other.x, y: other.y - 2 });
    expect(last(hand)).toMatchObject({ do: 'turn', part: 'freed', by: { until: 'legs-meet' } });
    expect(
      hand.work.pieces.find((piece) => piece.id === 'front')!.darts.find(({ id }) => id === 'right')!.state,
    ).toBe('closed');
  });

  it('stores the angle when they are left apart, signed clockwise', () => {
    const hand = slashed();
    const { point } = hand.target('turn:right:freed');
    hand.drag('turn:right:freed', { x: point.x + 3, y: point.y + 20 });
    const command = last(hand);
    expect(command).toMatchObject({ do: 'turn', by: { angle: expect.any(Number) } });
    const bust = landmark(hand.work, 'right/bust-point');
    const turned = hand.target('turn:right:freed').point;
    expect(distance(turned, bust)).toBeCloseTo(distance(point, bust), 9);
    expect(turned.y).toBeGreaterThan(point.y);
  });

  it('says which edges overlap: the legs when turned too far, the style line when turned the wrong way', () => {
    const hand = slashed();
    const { point } = hand.target('turn:right:freed');
    const other = hand.target('turn:right:rest').point;
    const named = (share: number) => {
      hand.move({
        x: point.x + (other.x - point.x) * share,
        y: point.y + (other.y - point.y) * share,
      });
      const { scene, preview, grip } = hand.context;
      const now = TOOLS.turn.readings!(scene, preview ?? scene.work, grip);
      return now.filter(({ dart }) => dart === 'right').map(({ id }) => id);
    };
    hand.down(point, 'turn:right:freed');
    expect(named(0.5)).toEqual(['gap', 'opened']);
    expect(named(1.6)).toEqual(['overlap', 'opened']);
    expect(named(-0.6)).toEqual(['gap', 'overlap']);
  });

  it('holds where the legs meet on the way, when keys turn it', () => {
    const hand = slashed();
    const gap = distance(hand.target('turn:right:freed').point, hand.target('turn:right:rest').point);
    // The arc is longer than its chord: the legs must meet at the press after those that the chord would take.
    hand.nudge('turn:right:freed', -20, 0, Math.floor(gap / 20));
    expect(hand.context.proposal).toMatchObject({ command: { by: { angle: expect.any(Number) } } });
    hand.nudge('turn:right:freed', -20);
    expect(hand.context.proposal).toMatchObject({ command: { by: { until: 'legs-meet' } } });
    hand.nudge('turn:right:freed', -2);
    expect(hand.context.proposal).toMatchObject({ command: { by: { angle: expect.any(Number) } } });
  });

  it('either part may turn', () => {
    const hand = slashed().option('part', 'rest').act('meet:right');
    expect(last(hand)).toMatchObject({ part: 'rest', by: { until: 'legs-meet' } });
  });

  it('turns about the pin where the pin was put, and keeps that a turn by an angle', () => {
    const hand = slashed();
    const { point: pin } = hand.target('pin:right');
    hand.drag('pin:right', { x: pin.x + 14, y: pin.y });
    expect(hand.commands).toHaveLength(1);
    const other = hand.target('turn:right:rest').point;
    hand.drag('turn:right:freed', other);
    expect(last(hand)).toMatchObject({
      about: { landmark: 'right/bust-point', dx: expect.closeTo(14, 6) },
      by: { angle: expect.any(Number) },
    });
  });

  it('lets the pin snap back into the bust point', () => {
    const hand = slashed();
    const { point: pin } = hand.target('pin:right');
    hand.drag('pin:right', { x: pin.x + 14, y: pin.y }).drag('pin:right', { x: pin.x + 3, y: pin.y });
    expect(hand.target('pin:right').point).toEqual(pin);
  });
});

describe('connect', () => {
  it('holds at the nearest point of the line, where the connector is shortest', () => {
    const hand = new Hand(before('connectors')).take('connect');
    const line = hand.work.lines[0]!;
    const bust = landmark(hand.work, 'right/bust-point');
    const foot = nearestOnChain(line.chain, bust);
    hand.drag('tip:right', { x: foot.point.x + 1, y: foot.point.y + 1 });
    expect(hand.work.lines[0]!.feet['right']!.at).toBeCloseTo(foot.length, 6);
  });

  it('keeps what holds there as the foot of the perpendicular, to the last bit of its length, and all else as a share', () => {
    const hand = new Hand(before('connectors')).take('connect');
    const line = hand.work.lines[0]!;
    const bust = landmark(hand.work, 'right/bust-point');
    const foot = nearestOnChain(line.chain, bust);
    const drawn = () => hand.work.lines[0]!.feet['right']!;
    const off = ({ x, y }: Point): number => Math.hypot(x - bust.x, y - bust.y) - foot.distance;
    // Within the reach of a hand on either side, and beside it.
    for (const mm of [-1.4, -0.7, 0.3, 1.2]) {
      hand.drag('tip:right', pointAtLength(line.chain, foot.length + mm));
      expect([mm, drawn().square, off(drawn().foot) < 1e-9]).toEqual([mm, true, true]);
    }
    for (const mm of [-8, 8]) {
      hand.drag('tip:right', pointAtLength(line.chain, foot.length + mm));
      expect([mm, drawn().square]).toEqual([mm, undefined]);
      expect(drawn().at).toBeCloseTo(foot.length + mm, 6);
    }
  });
});
