import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { chainLength } from '../../src/lib/geometry/chain.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import type { Point } from '../../src/lib/geometry/types.ts';
import { findEdge, landmark } from '../../src/lib/pattern/outline.ts';
import { lineOf } from '../../src/lib/machines/scene.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import type { Command, DrawSlash, Pivot, Recipe, Turn, Work } from '../../src/lib/recipe/types.ts';
import { toolOf } from '../../src/lib/machines/tools/known.ts';
import { BUST, TWO_CUTS, TWO_LINES, WAIST, WORKING } from './dart-tables.ts';
import { tableOf } from './finish-tables.ts';
import { Hand } from './hand.ts';

const frontOf = (work: Work) => work.pieces.find(({ id }) => id === 'front')!;
const bustOf = (work: Work): Point => landmark(frontOf(work), BUST.landmark)!;
const readings = (hand: Hand) => {
  const { scene, preview, grip } = hand.context;
  return toolOf(hand.tool)!.readings!(scene, preview ?? scene.work, grip);
};
/** The start of an edge, and a point on it so many mm on. */
const on = (work: Work, edge: string, part: number): Point => {
  const { a, d } = findEdge(frontOf(work), edge)!.chain[0]!;
  return { x: a.x + (d.x - a.x) * part, y: a.y + (d.y - a.y) * part };
};
const given = <C extends Command>(hand: Hand): C => hand.commands.at(-1) as C;

// What a tool asks for is the project's own design; measures beside it are checked by arithmetic of their own.
describe('the tool for the working dart', () => {
  it('reads the angle of the dart while its point is pulled: it becomes smaller towards the bust point', () => {
    const start = tableOf([]);
    const hand = new Hand(start).take('extend-dart');
    const { point } = hand.target(`tip:${WAIST}`);
    const bust = bustOf(start);
    const angle = () => readings(hand).find(({ id }) => id === 'angle')!.value;
    hand.down(point, `tip:${WAIST}`).move({ x: point.x + 4, y: point.y + 4 });
    const short = angle();
    hand.move(bust);
    const read = angle();
    expect(read).toBeLessThan(short);
    hand.up();
    const dart = frontOf(hand.work).darts.find(({ id }) => id === WAIST)!;
    const [a, b] = [dart.upper, dart.lower].map((id) => {
      const { a: from, d: to } = findEdge(frontOf(hand.work), id)!.chain[0]!;
      return distance(from, bust) > distance(to, bust) ? from : to;
    });
    // By the law of cosines, from the three sides of the triangle.
    const [p, q, r] = [distance(a!, bust), distance(b!, bust), distance(a!, b!)];
    expect(read).toBeCloseTo(Math.acos((p * p + q * q - r * r) / (2 * p * q)), 9);
  });
});

describe('the tool for slash lines', () => {
  const start = tableOf(WORKING);

  it('pulled from an edge to the bust point: both ends snap, and the start reads from the ends of its edge', () => {
    const hand = new Hand(start).take('draw-slash');
    const from = on(start, 'right/side', 0.3);
    const bust = bustOf(start);
    hand.down({ x: from.x + 2, y: from.y }).move({ x: bust.x + 40, y: bust.y + 9 });
    const whole = chainLength(findEdge(frontOf(start), 'right/side')!.chain);
    const ends = readings(hand).filter(({ id }) => id.startsWith('from-end:'));
    expect(ends.map(({ value }) => value).reduce((a, b) => a + b)).toBeCloseTo(whole, 9);
    expect(readings(hand).find(({ id }) => id === 'from-bust')!.value).toBeCloseTo(Math.hypot(40, 9), 6);
    hand.move({ x: bust.x + 3, y: bust.y - 2 }).up();
    const made = given<DrawSlash>(hand);
    expect(made).toMatchObject({ do: 'draw-slash', slash: 'slash', from: { on: 'right/side' }, to: BUST });
    expect((made.from as { at: number }).at).toBeCloseTo(0.3, 2);
    expect(hand.work.lines.map(({ id }) => id)).toEqual(['slash']);
  });

  it('where a hand itself has come to the bust point it has brought the end there, though the end lags; on an edge it has not', () => {
    const hand = new Hand(start).take('draw-slash');
    const bust = bustOf(start);
    hand.down(on(start, 'right/side', 0.3)).lead({ x: bust.x - 60, y: bust.y }, { x: bust.x - 8, y: bust.y });
    expect(readings(hand).find(({ id }) => id === 'from-bust')!.value).toBeCloseTo(60, 6);
    hand.lead({ x: bust.x - 50, y: bust.y }, { x: bust.x - 3, y: bust.y + 2 }).up();
    expect(given<DrawSlash>(hand)).toMatchObject({ to: BUST });

    const { point } = hand.target('from:slash');
    const [led, goal] = [on(start, 'right/side', 0.4), on(start, 'right/side', 0.6)];
    hand.down(point, 'from:slash').lead(led, goal).up();
    expect((given<DrawSlash>(hand).from as { at: number }).at).toBeCloseTo(0.4, 6);
  });

  it('picked and placed by keys alone, then slid along its edge; the next line gets the next free name', () => {
    const hand = new Hand(start).take('draw-slash');
    hand.pick('start:right/shoulder').pick(`end:${BUST.landmark}`);
    expect(given<DrawSlash>(hand)).toMatchObject({ slash: 'slash', to: BUST });
    const before = hand.target('from:slash').point;
    hand.nudge('from:slash', 10, 0, 2).pick('from:slash');
    const after = hand.target('from:slash').point;
    expect(distance(before, after)).toBeGreaterThan(10);
    expect(given<DrawSlash>(hand)).toMatchObject({
      slash: 'slash',
      from: { on: 'right/shoulder' },
      to: BUST,
    });
    // The place to begin another line from is in the longest free stretch of the edge.
    expect(distance(hand.target('start:right/shoulder').point, after)).toBeGreaterThan(20);
    hand.pick('start:right/neckline').pick(`end:${BUST.landmark}`);
    hand.pick('start:right/shoulder').pick(`end:${BUST.landmark}`);
    expect(hand.work.lines.map(({ id }) => id)).toEqual(['slash', 'slash-2', 'slash-3']);
  });

  it('stepped by keys it comes to the bust point that steps would pass by, and steps lead out of it again', () => {
    const hand = new Hand(start).take('draw-slash');
    const id = 'start:right/shoulder';
    const bust = bustOf(start);
    const from = hand.target(id).point;
    // By steps of 2 mm it would come no nearer than 1.2 mm.
    hand.pick(id).nudge(id, bust.x - from.x + 5.2, bust.y - from.y);
    const off = () => readings(hand).find((one) => one.id === 'from-bust')?.value ?? 0;
    expect(off()).toBeCloseTo(5.2, 6);
    hand.nudge(id, -2);
    expect(off()).toBeCloseTo(3.2, 6);
    hand.nudge(id, -2);
    expect(off()).toBe(0);
    hand.nudge(id, 0.2);
    expect(off()).toBeCloseTo(0.2, 6);
    hand.nudge(id, -0.2).nudge(id, -2);
    expect(off()).toBeCloseTo(2, 6);
    hand.nudge(id, 2).pick(id);
    expect(given<DrawSlash>(hand)).toMatchObject({ to: BUST });
  });

  it('begun in the bust point it gives the same line', () => {
    const hand = new Hand(start).take('draw-slash');
    const to = on(start, 'right/side', 0.4);
    hand.drag(`end:${BUST.landmark}`, { x: to.x - 4, y: to.y });
    expect(given<DrawSlash>(hand)).toMatchObject({ from: { on: 'right/side' }, to: BUST });
    hand.drag(`end:${BUST.landmark}`, { x: to.x + 60, y: to.y });
    expect(hand.commands).toHaveLength(1);
  });

  it('is bent at a point on a circle round the bust point, and made straight again', () => {
    const hand = new Hand(start).take('draw-slash');
    hand.pick('start:right/shoulder').pick(`end:${BUST.landmark}`);
    const bust = bustOf(start);
    hand.drag('via:slash', { x: bust.x - 12, y: bust.y - 20 });
    const via = hand.target('via:slash').point;
    expect(distance(via, bust)).toBeCloseTo(22.2, 6);
    expect(given<DrawSlash>(hand).via).toMatchObject({ landmark: BUST.landmark });
    hand.option('circle', 30).drag('via:slash', { x: bust.x, y: bust.y - 28 });
    expect(distance(hand.target('via:slash').point, bust)).toBeCloseTo(30, 6);
    hand.remove('via:slash');
    expect(given<DrawSlash>(hand).via).toBeUndefined();
  });

  it('refuses what lies beside an edge', () => {
    const hand = new Hand(start).take('draw-slash');
    const bust = bustOf(start);
    hand.down({ x: bust.x + 50, y: bust.y - 40 }).up();
    expect(hand.state).toBe('idle');
  });
});

describe('the scissors for slash lines', () => {
  it('hold at the tip, go past it, and stop short of it with the distance', () => {
    const start = tableOf(TWO_LINES);
    const bust = bustOf(start);
    const hand = new Hand(start).take('cut-slash');
    expect(hand.targets.map(({ id }) => id)).toEqual(['cut:slash-1', 'cut:slash-2', 'tip:slash-1']);
    hand.drag('cut:slash-1', { x: bust.x + 3, y: bust.y });
    expect(given(hand)).toEqual({ do: 'cut-slash', slash: 'slash-1', past: 0 });
    expect(hand.targets.map(({ id }) => id)).toEqual(['cut:slash-2', 'tip:slash-2']);
    hand.drag('cut:slash-2', { x: bust.x, y: bust.y - 40 });
    expect(hand.refused.at(-1)).toMatchObject({ code: 'slash-stops-short' });
    hand.pick('cut:slash-2').nudge('cut:slash-2', 0, 300);
    expect(readings(hand)).toMatchObject([{ id: 'to-tip', value: 0 }]);
    hand.nudge('cut:slash-2', 0, 3);
    hand.pick('cut:slash-2');
    expect((given(hand) as { past: number }).past).toBeCloseTo(3, 1);
  });
});

describe('the tool that turns', () => {
  const start = tableOf(TWO_CUTS);

  it('asks which dart closes and which slash opens, and turns by the share that was typed', () => {
    const hand = new Hand(start).take('turn');
    const options = () =>
      Object.fromEntries(toolOf('turn')!.options!(hand.context.scene).map((o) => [o.id, o]));
    expect(options()['into']).toMatchObject({ value: 'slash-1', choices: ['slash-1', 'slash-2'] });
    expect(options()['dart']).toBeUndefined();
    // A number alone does not tell which line of the table is meant.
    expect(options()['into']!.on).toEqual({ 'slash-1': 'right/side', 'slash-2': 'right/shoulder' });
    const share = () => toolOf('turn')!.options!(hand.context.scene).find(({ kind }) => kind === 'percent')!;
    hand.option(share().id, 0.5).act(`turn:${WAIST}`);
    expect(given<Turn>(hand)).toMatchObject({
      dart: WAIST,
      into: 'slash-1',
      by: { share: 0.5 },
      about: BUST,
    });
    // Now the first slash could close again too, and the second one is the one that is not open yet.
    expect(options()['dart']).toMatchObject({ value: WAIST, choices: [WAIST, 'slash-1'] });
    expect(options()['into']).toMatchObject({ value: 'slash-2' });
    // The share was of what was open then: now all that is left is meant.
    expect(share().value).toBe(1);
    hand.act(`turn:${WAIST}`);
    expect(given<Turn>(hand)).toMatchObject({ dart: WAIST, into: 'slash-2', by: { until: 'legs-meet' } });
    const angles = frontOf(hand.work).darts.map(({ id, residual }) => [id, residual] as const);
    const whole = frontOf(start).darts.find(({ id }) => id === WAIST)!.residual;
    for (const [id, angle] of angles) expect(angle).toBeCloseTo(id === WAIST ? 0 : whole / 2, 12);
  });

  it('forgets which slash was to open once it was opened, and keeps a choice that was not followed yet', () => {
    const hand = new Hand(start).take('turn');
    const options = () =>
      Object.fromEntries(toolOf('turn')!.options!(hand.context.scene).map((o) => [o.id, o.value]));
    const share = () => toolOf('turn')!.options!(hand.context.scene).find(({ kind }) => kind === 'percent')!;
    hand.option('into', 'slash-2').option(share().id, 0.5);
    expect(options()['into']).toBe('slash-2');
    hand.act(`turn:${WAIST}`);
    expect(given<Turn>(hand)).toMatchObject({ into: 'slash-2' });
    // The other one is not open yet: it is next, as where nothing was chosen.
    expect(options()['into']).toBe('slash-1');
    hand.act(`turn:${WAIST}`);
    expect(given<Turn>(hand)).toMatchObject({ into: 'slash-1' });
  });

  it('pulled by the freed part it holds where the legs meet, reading gap and width; keys stop there too', () => {
    const hand = new Hand(start).take('turn', { into: 'slash-2' });
    const { point, dart } = hand.target(`turn:${WAIST}:freed`);
    const other = hand.target(`turn:${WAIST}:rest`).point;
    expect(dart).toBe(WAIST);
    hand.down(point, `turn:${WAIST}:freed`).move({ x: (point.x + other.x) / 2, y: (point.y + other.y) / 2 });
    const gap = readings(hand).find(({ id }) => id === 'gap')!.value;
    expect(gap / distance(point, other)).toBeCloseTo(0.5, 1);
    // What opens at the shoulder is 2 L sin(angle / 2), L from the bust point to the shoulder (trade notes, derived).
    const angle = 2 * Math.asin(gap / 2 / distance(point, bustOf(start)));
    const whole = frontOf(start).darts.find(({ id }) => id === WAIST)!.residual;
    const leg = distance(findEdge(frontOf(start), 'slash-2/b')!.chain[0]!.a, bustOf(start));
    const opened = readings(hand).find(({ id }) => id === 'opened')!.value;
    expect(opened).toBeCloseTo(2 * leg * Math.sin((whole - angle) / 2), 6);
    // Pulled past the other leg the legs overlap; pulled the other way the sides of the slash do.
    const past = (share: number): Point => ({
      x: point.x + (other.x - point.x) * share,
      y: point.y + (other.y - point.y) * share,
    });
    const named = () => readings(hand).map(({ id }) => id);
    hand.move(past(1.6));
    expect(named()).toEqual(['overlap', 'opened']);
    expect(readings(hand)[0]!.value).toBeGreaterThan(5);
    hand.move(past(-0.6));
    expect(named()).toEqual(['gap', 'overlap']);
    hand.move({ x: other.x + 2, y: other.y + 1 }).up();
    expect(given<Turn>(hand)).toMatchObject({ into: 'slash-2', part: 'freed', by: { until: 'legs-meet' } });

    const keys = new Hand(start).take('turn');
    const meets = (): boolean => JSON.stringify(keys.context.proposal ?? {}).includes('legs-meet');
    for (let i = 0; i < 40 && !meets(); i++) keys.nudge(`turn:${WAIST}:freed`, -20);
    expect(keys.context.proposal).toMatchObject({ command: { by: { until: 'legs-meet' } } });
  });

  it('the part under the pointer turns, and the pin may stand elsewhere', () => {
    const hand = new Hand(start).take('turn');
    const { point } = hand.target(`pin:${WAIST}`);
    hand.drag(`pin:${WAIST}`, { x: point.x + 20, y: point.y });
    hand.down({ x: point.x - 60, y: point.y + 60 }, undefined, { piece: 'front', part: 'freed-slash-1' });
    hand.move({ x: point.x - 60, y: point.y + 66 }).up();
    expect(given<Turn>(hand)).toMatchObject({
      about: { dx: 20 },
      part: 'freed',
      by: { angle: expect.any(Number) },
    });
  });
});

describe('the tool that pins and swings', () => {
  const start = tableOf(WORKING);

  it('once a swing is taken back, the pin stands in the bust point again and the mark where it was', () => {
    const hand = new Hand(start).take('pivot').pick('mark:right/armhole');
    const [pin, mark] = [hand.target(`pin:${WAIST}`).point, hand.target('mark').point];
    hand.drag(`pin:${WAIST}`, { x: pin.x + 14, y: pin.y });
    expect(hand.target(`pin:${WAIST}`).point.x).toBeCloseTo(pin.x + 14, 6);
    hand.drag(`turn:${WAIST}:freed`, hand.target(`turn:${WAIST}:rest`).point);
    expect(given<Pivot>(hand).about).toMatchObject({ dx: expect.closeTo(14, 6) });
    hand.backTo(start);
    expect(hand.target(`pin:${WAIST}`).point).toEqual(pin);
    expect(hand.target('mark').point).toEqual(mark);
  });
  it('a mark that is in no command yet is taken back by itself, one by one, and none of an older table', () => {
    const hand = new Hand(start).take('pivot').pick('mark:right/armhole');
    const first = hand.target('mark').point;
    const edge = on(start, 'right/side', 0.5);
    hand.drag('mark', edge);
    expect(distance(hand.target('mark').point, edge)).toBeLessThan(1);
    hand.markBack();
    expect(hand.target('mark').point).toEqual(first);
    hand.markBack();
    expect(hand.targets.some(({ id }) => id === 'mark')).toBe(false);
    expect(hand.context.back).toEqual([]);

    hand.pick('mark:right/armhole').drag(`turn:${WAIST}:freed`, hand.target(`turn:${WAIST}:rest`).point);
    expect(hand.context.back).toEqual([]);
  });

  const half = (): Hand => {
    const hand = new Hand(start).take('pivot');
    return hand.pick('mark:right/armhole');
  };

  it('mark, pin, swing: nothing is given before the block swings', () => {
    const hand = new Hand(start).take('pivot');
    expect(hand.targets.every(({ id }) => id.startsWith('mark:'))).toBe(true);
    const edge = on(start, 'right/side', 0.5);
    hand.down({ x: edge.x + 1, y: edge.y }).up();
    expect(hand.commands).toEqual([]);
    expect(hand.targets.map(({ id }) => id)).toEqual([
      'mark',
      `pin:${WAIST}`,
      `turn:${WAIST}:freed`,
      `turn:${WAIST}:rest`,
    ]);
    hand.nudge('mark', 0, 10).pick('mark');
    expect(hand.target('mark').point.y - edge.y).toBeGreaterThan(8);
    const own = hand.target(`turn:${WAIST}:freed`).point;
    const other = hand.target(`turn:${WAIST}:rest`).point;
    hand
      .down(own, `turn:${WAIST}:freed`)
      .move({ x: other.x + 1, y: other.y - 1 })
      .up();
    expect(given<Pivot>(hand)).toMatchObject({
      do: 'pivot',
      dart: WAIST,
      slash: 'new',
      from: { on: 'right/side' },
      about: BUST,
      by: { until: 'legs-meet' },
      part: 'freed',
    });
    expect(hand.work.lines.map(({ id }) => id)).toEqual(['new']);
  });

  it('the first half is traced from the dart round to the mark and stays, the second from the mark on to the dart', () => {
    const hand = half();
    const tracing = () => toolOf('pivot')!.tracing!(hand.context.scene, hand.context.grip)!;
    const { first, second, angle } = tracing();
    const mark = hand.target('mark').point;
    expect(angle).toBe(0);
    expect(distance(first[0]!.a, hand.target(`turn:${WAIST}:rest`).point)).toBeLessThan(1e-6);
    expect(distance(first.at(-1)!.d, mark)).toBeLessThan(1e-6);
    expect(distance(second[0]!.a, mark)).toBeLessThan(1e-6);
    expect(distance(second.at(-1)!.d, hand.target(`turn:${WAIST}:freed`).point)).toBeLessThan(1e-6);
    // Together they are the outline without the dart's legs.
    const edges = frontOf(start).parts[0]!.edges.filter(({ role }) => role !== 'dart-leg');
    const whole = edges.reduce((sum, { chain }) => sum + chainLength(chain), 0);
    expect(chainLength(first) + chainLength(second)).toBeCloseTo(whole, 6);
    // Towards the other leg it opens at the mark; past it the legs overlap, and the other way the outline does at the mark.
    const own = hand.target(`turn:${WAIST}:freed`).point;
    const other = hand.target(`turn:${WAIST}:rest`).point;
    const named = (share: number) => {
      hand.move({ x: own.x + (other.x - own.x) * share, y: own.y + (other.y - own.y) * share });
      return readings(hand).map(({ id }) => id);
    };
    hand.down(own, `turn:${WAIST}:freed`);
    expect(named(0.5)).toEqual(['gap', 'opened']);
    expect(tracing().angle).not.toBe(0);
    expect(named(1.6)).toEqual(['overlap', 'opened']);
    expect(named(-0.6)).toEqual(['gap', 'overlap']);
  });

  it('the button swings until the legs meet, or by a share; the other half may be the one that swings', () => {
    const hand = half();
    const share = toolOf('pivot')!.options!(hand.context.scene).find(({ kind }) => kind === 'percent')!;
    hand.option('still', 'side').option(share.id, 0.25).act(`swing:${WAIST}`);
    expect(given<Pivot>(hand)).toMatchObject({ part: 'rest', by: { share: 0.25 } });
    expect((given<Pivot>(hand).from as { at: number }).at).toBeCloseTo(0.5, 12);
  });
});

describe('the scissors along a line with one connector', () => {
  it('can begin at either end of the line, and cut what that end means', () => {
    const file = 'lessons/line-near-the-bust-point/05-move/attempts/slashed-only.attempt.json';
    const recipe = JSON.parse(readFileSync(file, 'utf8')) as Recipe;
    const at = recipe.commands.findIndex((one) => one.do === 'slash');
    const { work } = replay({ ...recipe, commands: recipe.commands.slice(0, at) });
    const [start, end] = lineOf(work)!.ends;
    for (const [edge, from] of [
      [start, 'start'],
      [end, 'end'],
    ] as const) {
      const hand = new Hand(work).take('slash');
      expect(hand.targets.map(({ id }) => id)).toContain(`cut:right from ${edge}`);
      const tip = hand.targets.find(({ kind }) => kind === 'tip')!;
      hand.drag(`cut:right from ${edge}`, tip.point);
      expect(hand.commands).toMatchObject([{ do: 'slash', dart: 'right', from, past: 0 }]);
      expect(hand.work.pieces[0]!.hinges.map(({ dart }) => dart)).toEqual(['right']);
    }
  });
});
