import { describe, expect, it } from 'vitest';
import { distance } from '../../src/lib/geometry/point.ts';
import { sewnDart } from '../../src/lib/pattern/back-off.ts';
import { landmark } from '../../src/lib/pattern/outline.ts';
import { FINISH_TABLES, SEWN_TABLE, tableOf } from './finish-tables.ts';
import { Hand } from './hand.ts';

const WAIST = 'right/waist-dart';
const handAt = (tool: keyof typeof FINISH_TABLES): Hand => new Hand(FINISH_TABLES[tool]!).take(tool);

// What a tool asks for is the project's own design: no outside value stands beside these.
describe('the tools that finish a dart', () => {
  it('back off: the point is pulled down the middle of the dart, never beyond the edge', () => {
    const hand = handAt('back-off');
    const { point } = hand.target(`tip:${WAIST}`);
    hand
      .down(point, `tip:${WAIST}`)
      .move({ x: point.x + 3, y: point.y + 19 })
      .up();
    expect(hand.commands).toHaveLength(1);
    expect(hand.commands[0]).toMatchObject({ do: 'back-off', dart: WAIST });
    const { by } = hand.commands[0] as { by: number };
    expect(by).toBeGreaterThan(17);
    expect(by).toBeLessThan(20);
    const sewn = sewnDart(hand.work.pieces[0]!, WAIST)!;
    expect(distance(sewn.point, hand.target(`tip:${WAIST}`).point)).toBeLessThan(1e-9);
    hand
      .down(sewn.point, `tip:${WAIST}`)
      .move({ x: sewn.point.x, y: sewn.point.y + 900 })
      .up();
    expect(hand.commands).toHaveLength(1);
    expect(hand.refused.map((r) => r.code)).toEqual(['back-off-too-far']);
  });

  it('back off: put down where the block draws it, the dart is backed off by as much; a second time nothing is done', () => {
    const hand = new Hand(SEWN_TABLE).take('back-off');
    const { point } = hand.target(`tip:${WAIST}`);
    const bust = landmark(SEWN_TABLE.pieces[0]!, 'right/bust-point')!;
    hand.pick(`tip:${WAIST}`).pick(`tip:${WAIST}`);
    expect(hand.commands).toHaveLength(1);
    const { by } = hand.commands[0] as { by: number };
    // It stands as far from the bust point as it is drawn, on the middle of the dart.
    expect(by).toBeCloseTo(distance(point, bust), 6);
    expect(distance(hand.target(`tip:${WAIST}`).point, point)).toBeLessThan(1e-6);
    expect(hand.target(`tip:${WAIST}`).done).toBe(true);
    hand.pick(`tip:${WAIST}`).pick(`tip:${WAIST}`);
    expect(hand.commands).toHaveLength(1);
  });

  it('back off: a dart that reaches the bust point and is put down there is not backed off', () => {
    const hand = handAt('back-off');
    hand.pick(`tip:${WAIST}`).pick(`tip:${WAIST}`);
    expect(hand.commands).toEqual([]);
  });

  it('true the legs: offered only where they differ, with by how much', () => {
    const hand = handAt('true-legs');
    expect(hand.targets.map((t) => t.id)).toEqual(['mouth:slash']);
    hand.pick('mouth:slash');
    expect(hand.commands).toEqual([{ do: 'true-legs', dart: 'slash' }]);
    expect(hand.targets).toEqual([]);
    expect(handAt('cap').targets.map((t) => t.dart)).toEqual([WAIST]);
  });

  it('cap: folded the way that was said', () => {
    const hand = handAt('cap');
    hand.option('fold', 'side').pick(`mouth:${WAIST}`);
    expect(hand.commands).toEqual([{ do: 'cap', dart: WAIST, fold: 'side' }]);
    expect(hand.target(`mouth:${WAIST}`).done).toBe(true);
    // Another fold takes its place.
    hand.option('fold', 'centre').pick(`mouth:${WAIST}`);
    expect(hand.work.pieces[0]!.finished).toHaveLength(1);
  });

  // Source: trade notes: vertical darts are folded to the centre, horizontal darts down (read: Erwin p. 42).
  it('cap: each dart is offered the ways that fit its edge, the usual one first', () => {
    const hand = new Hand(tableOf([], 'two-dart')).take('cap');
    const offered = () => hand.options.map(({ id, value, choices }) => [id, value, choices?.join()]);
    expect(offered()).toEqual([
      ['fold:right', 'down', 'down,up'],
      [`fold:${WAIST}`, 'centre', 'centre,side'],
    ]);
    hand.option('fold:right', 'up').pick('mouth:right').pick(`mouth:${WAIST}`);
    expect(hand.commands).toEqual([
      { do: 'cap', dart: 'right', fold: 'up' },
      { do: 'cap', dart: WAIST, fold: 'centre' },
    ]);
    expect(handAt('cap').options.map(({ id, choices }) => [id, choices])).toEqual([
      ['fold', ['centre', 'side']],
    ]);
  });

  it('fullness: the ends are pulled along the seam, then the dart is drawn over', () => {
    const hand = handAt('fullness');
    const before = hand.target('over:before:slash');
    hand.nudge('over:before:slash', 4).pick('over:before:slash');
    expect(hand.target('over:before:slash').at).toBeCloseTo(before.at! + 4, 6);
    hand.option('as', 'tucks').option('tucks', '4').pick('mouth:slash');
    expect(hand.commands).toHaveLength(1);
    expect(hand.commands[0]).toMatchObject({
      do: 'fullness',
      dart: 'slash',
      as: 'tucks',
      tucks: 4,
      after: 30,
    });
    expect((hand.commands[0] as { before: number }).before).toBeCloseTo(34, 6);
    expect(hand.targets.some((t) => t.dart === 'slash')).toBe(false);
  });

  it('princess line: one dart, then the other; the corner is pulled along the seam', () => {
    const hand = handAt('part-at-darts');
    hand.pick('mouth:slash');
    expect(hand.commands).toEqual([]);
    expect(hand.target('mouth:slash').done).toBe(true);
    hand.pick(`mouth:${WAIST}`);
    expect(hand.commands).toEqual([{ do: 'part-at-darts', darts: ['slash', WAIST] }]);

    const smooth = handAt('smooth-seam');
    expect(smooth.targets.map((t) => t.piece)).toEqual(['front-centre', 'front-side']);
    const { id, point } = smooth.targets[0]!;
    smooth
      .down(point, id)
      .move({ x: point.x + 5, y: point.y + 40 })
      .up();
    expect(smooth.commands[0]).toMatchObject({ do: 'smooth-seam', piece: 'front-centre' });
    expect(smooth.targets.map((t) => t.piece)).toEqual(['front-side']);
  });

  it('notches of a seam: pulled from the bust point, tapped on the edge, slid along by keys', () => {
    const hand = handAt('notch-seam');
    expect(hand.targets.map((t) => t.id)).toEqual(['new:front-centre:princess', 'new:front-side:princess']);
    hand.pick('new:front-side:princess').pick('new:front-side:princess');
    expect(hand.commands).toEqual([{ do: 'notch-seam', id: 'n1', line: 'princess', off: 0 }]);
    hand.nudge('new:front-side:princess', 44).pick('new:front-side:princess');
    expect(hand.commands[1]).toMatchObject({ id: 'n2' });
    expect(Math.abs((hand.commands[1] as { off: number }).off)).toBeCloseTo(44, 6);
    // Marked on one edge, it stands on the other too.
    expect(hand.targets.filter((t) => t.kind === 'notch')).toHaveLength(4);
  });
});
