import { describe, expect, it, vi } from 'vitest';
import { chainLength, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { distance, sub, unit, add, scale } from '../../src/lib/geometry/point.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { sharpestJoint, tightest } from '../../src/lib/grading/curvature.ts';
import { TOOLS } from '../../src/lib/machines/tools/index.ts';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import { outlineOf } from '../../src/lib/pattern/outline.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import type { Command, DrawCurve, Work } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { Hand } from './hand.ts';

// Strokes of hundreds of moves; a busy machine must not make them fail.
vi.setConfig({ testTimeout: 60_000 });

const FIGURE_CODES = Object.keys(FIGURES);

/** The opened front of a figure, and the line that the sample draws on it. */
function table(figure = 'F2'): { readonly opened: Work; readonly line: Chain } {
  const sample = sampleAttempt(figure, 'knit', { upTo: 'style-line' });
  const at = sample.commands.findIndex(({ step }) => step === 'style-line');
  return {
    opened: replay({ ...sample, commands: sample.commands.slice(0, at) }).work,
    line: replay(sample).work.lines[0]!.chain,
  };
}

/** A chain as a hand runs along it: every `step` mm, with a slow sway of `sway` mm, from and to some mm beyond or short of its ends. */
function along(chain: Chain, step: number, sway = 0, beyond: readonly [number, number] = [0, 0]): Point[] {
  const whole = chainLength(chain);
  const [from, to] = [-Math.min(0, beyond[0]), whole + Math.min(0, beyond[1])];
  const n = Math.ceil((to - from) / step);
  const out = Array.from({ length: n + 1 }, (_, i) => {
    const p = pointAtLength(chain, from + ((to - from) * i) / n);
    return { x: p.x + sway * Math.sin(i / 5), y: p.y + sway * Math.cos(i / 7) };
  });
  const past = (p: Point, q: Point, mm: number) => add(p, scale(unit(sub(p, q)), mm));
  if (beyond[0] > 0) out.unshift(past(out[0]!, out[1]!, beyond[0]));
  if (beyond[1] > 0) out.push(past(out.at(-1)!, out.at(-2)!, beyond[1]));
  return out;
}

function draw(hand: Hand, [first, ...rest]: readonly Point[], piece = 'front'): Hand {
  hand.take('draw-curve').down(first!, undefined, { piece });
  for (const p of rest) hand.move(p);
  return hand;
}

const lineOn = (work: Work) => work.lines.find((one) => one.id === 'line')!;
const farthest = (a: Chain, b: Chain): number =>
  Math.max(...along(a, 2).map((p) => nearestOnChain(b, p).distance));

describe('the style line in one stroke', () => {
  it('needs the paper, and more than a slip of the hand', () => {
    const { opened } = table();
    const half = new Hand(replay({ ...sampleAttempt('F2', 'knit'), commands: [] }).work).take('draw-curve');
    half.down({ x: -100, y: -100 }).move({ x: -50, y: 0 });
    expect(half.state).toBe('idle');
    const slip = draw(new Hand(opened), [
      { x: 0, y: 0 },
      { x: 4, y: 3 },
      { x: 9, y: 4 },
    ]).up();
    expect(slip.commands).toEqual([]);
    const off = new Hand(opened).take('draw-curve').down({ x: 900, y: 0 }, undefined, {});
    expect(off.state).toBe('idle');
  });

  it('gives one command, and stores what it showed; let go it leaves the table as it was', () => {
    const { opened, line } = table();
    const hand = draw(new Hand(opened), along(line, 6));
    const preview = hand.context.preview;
    hand.up();
    expect(hand.commands.map((c) => c.do)).toEqual(['draw-curve']);
    expect(hand.work).toEqual(preview);
    const dropped = draw(new Hand(opened), along(line, 6)).escape();
    expect(dropped.commands).toEqual([]);
    expect(dropped.context.grip).toBeUndefined();
  });

  it.each(FIGURE_CODES)(
    'finds the line on figure %s that the hand meant, both ends on their edges',
    (figure) => {
      const { opened, line } = table(figure);
      for (const beyond of [
        [0, 0],
        [-4, -4],
        [9, 9],
        [9, -4],
      ] as const)
        for (const step of [2, 9]) {
          const hand = draw(new Hand(opened), along(line, step, 0.5, beyond)).up();
          const drawn = lineOn(hand.work);
          expect(drawn.ends, `${beyond.join(' and ')} mm beyond`).toEqual([
            'right/shoulder',
            'left/side-lower',
          ]);
          expect(farthest(drawn.chain, line)).toBeLessThan(2);
          expect(farthest(line, drawn.chain)).toBeLessThan(2);
          expect(drawn.kinks).toBe(0);
          expect(drawn.chain.length).toBeLessThanOrEqual(6);
          expect(sharpestJoint(drawn.chain).angle).toBeLessThan(1e-9);
          expect(tightest(drawn.chain).radius).toBeGreaterThan(25);
          const inner = hand.work.pieces[0]!.parts[0]!.lines.find((one) => one.id === 'line')!;
          expect(inner.faults).toEqual([]);
        }
    },
  );

  it('leaves an end that stops well short of the edge where it is', () => {
    const { opened, line } = table();
    const hand = draw(new Hand(opened), along(line, 5, 0, [0, -40])).up();
    const drawn = lineOn(hand.work);
    expect(drawn.ends).toEqual(['right/shoulder', undefined]);
    const inner = hand.work.pieces[0]!.parts[0]!.lines.find((one) => one.id === 'line')!;
    expect(inner.faults!.map((f) => f.code)).toEqual(['line-stops-short']);
  });

  it('draws the line anew with a second stroke', () => {
    const { opened, line } = table();
    const hand = draw(new Hand(opened), along(line, 5)).up();
    const first = lineOn(hand.work).chain;
    draw(
      hand,
      along(line, 5).map((p) => ({ x: p.x, y: p.y + 12 })),
    ).up();
    expect(hand.commands).toHaveLength(2);
    expect(hand.work.lines).toHaveLength(1);
    expect(farthest(lineOn(hand.work).chain, first)).toBeGreaterThan(8);
  });

  it('counts the kinks of the stroke, tells them as they are drawn, and keeps their corners', () => {
    const { opened } = table();
    const corners = [
      { x: -110, y: -235 },
      { x: -60, y: -20 },
      { x: 20, y: 90 },
      { x: 95, y: 20 },
      { x: 250, y: 100 },
    ];
    const stroke = corners.slice(1).flatMap((p, i) =>
      Array.from({ length: 20 }, (_, k) => ({
        x: corners[i]!.x + ((p.x - corners[i]!.x) * k) / 20,
        y: corners[i]!.y + ((p.y - corners[i]!.y) * k) / 20,
      })),
    );
    const hand = draw(new Hand(opened), [...stroke, corners.at(-1)!]);
    const { scene, grip, preview } = hand.context;
    const work = preview!;
    expect(grip!.trail!.length).toBeGreaterThan(80);
    const told = TOOLS['draw-curve'].readings!(scene, work, grip).filter(({ id }) => id.startsWith('kink'));
    expect(new Set(told.map(({ id }) => id)).size).toBe(2);
    for (const { value } of told) expect(value).toBeGreaterThan(0.8);
    hand.up();
    const drawn = lineOn(hand.work);
    // The bend at (−60, −20) turns by 21° only: it is a bend.
    expect(drawn.kinks).toBe(2);
    expect((hand.commands[0] as DrawCurve).kinks).toBe(2);
    expect(sharpestJoint(drawn.chain).angle).toBeGreaterThan(0.8);
    expect(work).toEqual(hand.work);
  });

  it('takes up all the places that a quick hand came through between two pictures', () => {
    const { opened, line } = table();
    const hand = new Hand(opened).take('draw-curve');
    const stroke = along(line, 3);
    hand.down(stroke[0]!);
    for (let i = 1; i < stroke.length; i += 15)
      hand.move(stroke[Math.min(i + 14, stroke.length - 1)]!, stroke.slice(i, i + 15));
    hand.up();
    expect(farthest(line, lineOn(hand.work).chain)).toBeLessThan(1.5);
  });
});

describe('a curve that was drawn in one stroke', () => {
  const { opened, line } = table();
  const command = draw(new Hand(opened), along(line, 5)).up().commands[0] as Command;

  it('replays to the very same line, and on every other figure to a smooth one on the same edges', () => {
    const again = apply(opened, command);
    if (!('work' in again)) throw new Error('refused');
    expect(farthest(lineOn(again.work).chain, line)).toBeLessThan(1.5);
    for (const figure of FIGURE_CODES) {
      const other = apply(table(figure).opened, command);
      if (!('work' in other)) throw new Error(`refused on ${figure}`);
      const drawn = lineOn(other.work);
      expect(drawn.ends).toEqual(['right/shoulder', 'left/side-lower']);
      expect(sharpestJoint(drawn.chain).angle, figure).toBeLessThan(0.0174533);
      expect(tightest(drawn.chain).radius, figure).toBeGreaterThan(20);
      expect(farthest(drawn.chain, table(figure).line), figure).toBeLessThan(25);
    }
  });

  it('can be shaped further point by point, and hardly moves when it is first taken up', () => {
    const drawn = draw(new Hand(opened), along(line, 5)).up();
    const before = lineOn(drawn.work);
    drawn.take('draw-line');
    const { point } = drawn.target('point:1');
    drawn
      .down(point, 'point:1')
      .move({ x: point.x + 4, y: point.y })
      .move({ x: point.x + 0.01, y: point.y })
      .up();
    const after = lineOn(drawn.work);
    expect(before.points.length).toBeLessThanOrEqual(10);
    expect(after.kinks).toBeUndefined();
    expect(farthest(after.chain, before.chain)).toBeLessThan(1.5);
    expect(distance(after.points[1]!, before.points[1]!)).toBeLessThan(0.1);
  });

  it('keeps the notches of the line that it replaces at their fractions', () => {
    const sample = sampleAttempt('F2', 'knit', { upTo: 'notches' });
    const notched = replay(sample).work;
    const next = apply(notched, command);
    if (!('work' in next)) throw new Error('refused');
    const of = (work: Work) => work.pieces[0]!.parts[0]!.lines.find((one) => one.id === 'line')!;
    expect(of(next.work).notches).toHaveLength(of(notched).notches.length);
    of(next.work).notches.forEach((n, i) =>
      expect(n.at / of(next.work).origin.to).toBeCloseTo(
        of(notched).notches[i]!.at / of(notched).origin.to,
        9,
      ),
    );
  });

  it('is refused with a number of points that no cubics have', () => {
    const { points } = command as DrawCurve;
    for (const wrong of [points.slice(0, 3), points.slice(0, -1)])
      expect(apply(opened, { ...command, points: wrong } as Command)).toMatchObject({
        refused: { code: 'not-a-curve', detail: { count: wrong.length } },
      });
    expect(outlineOf(opened.pieces[0]!).length).toBeGreaterThan(10);
  });
});
