import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainEnd, chainLength, chainStart, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import { radians } from '../../src/lib/geometry/trig.ts';
import { angleSum } from '../../src/lib/pattern/angles.ts';
import { dartAngle, pieceArea } from '../../src/lib/pattern/measure.ts';
import { findEdge, landmark, outlineOf } from '../../src/lib/pattern/outline.ts';
import { overlay } from '../../src/lib/pattern/overlay.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Command, TurnBy, Work } from '../../src/lib/recipe/types.ts';
import { real } from '../support/real.ts';
import '../support/seed.ts';
import {
  B,
  type Move,
  anyMove,
  done,
  edgesOf,
  extended,
  front,
  on,
  openingOf,
  refusal,
  slashed,
  stretched,
} from './darts.ts';

const BUST = 'right/bust-point';
const CLOSED: TurnBy = { until: 'legs-meet' };
const turn = (dart: string, into: string, by: TurnBy = CLOSED, part = 'freed'): Command => ({
  do: 'turn',
  dart,
  into,
  part,
  about: B(),
  by,
});
const F2 = (form: Move['form']): Work => startWork({ figure: 'F2', form });
const waist: Command = { do: 'extend-dart', dart: 'right/waist-dart', to: B() };
const edges = (piece: Piece) => piece.parts.flatMap((p) => p.edges);
const state = (piece: Piece, dart: string) => piece.darts.find((d) => d.id === dart)!.state;

function closedBitForBit(piece: Piece): void {
  const outline = outlineOf(piece);
  outline.forEach((e, i) => {
    const next = outline[(i + 1) % outline.length]!;
    expect(samePoint(chainEnd(e.chain), chainStart(next.chain)), `${e.id} > ${next.id}`).toBe(true);
  });
}

/** Each part laid on the block: how far off, mm. */
function overlaid(work: Work): number {
  const lines = work.lines.map(({ id, chain }) => ({ id, chain, feet: {} }));
  const fits = overlay(front(work), work.opened!, lines);
  expect(fits.flatMap((f) => f.missing)).toEqual([]);
  expect(fits.some((f) => f.mirrored)).toBe(false);
  return Math.max(...fits.map((f) => f.residual));
}

interface Several {
  readonly move: Move;
  readonly places: readonly {
    readonly at: number;
    readonly side: number;
    readonly share: number;
    readonly rest: boolean;
  }[];
}
const anySeveral: fc.Arbitrary<Several> = fc.record({
  move: anyMove,
  places: fc.array(
    fc.record({ at: real(0, 1), side: real(-25, 25), share: real(0, 1), rest: fc.boolean() }),
    {
      minLength: 1,
      maxLength: 4,
    },
  ),
});

/** Slashes at places all round the outline, some over an alternate pivot beside the bust point, cut one after another; and the turns into them. */
function withSlashes({ move, places }: Several): { work: Work; slashes: string[] } {
  let work = done(startWork(move.block), ...extended(move));
  const all = edgesOf(move.form);
  const slashes: string[] = [];
  places.forEach(({ at, side }, i) => {
    const slash = `slash-${i + 1}`;
    const edge = all[Math.min(all.length - 1, Math.floor(at * all.length))]!;
    const from = on(edge, 0.1 + 0.8 * (at * all.length - Math.floor(at * all.length)));
    const via = side > 5 ? B(side, -side) : undefined;
    const [draw, cut] = slashed(slash, from, via) as [Command, Command];
    // An edge that a slash has divided goes by two names, and a place behind an armhole or a dart cannot be drawn to.
    if (refusal(work, draw) !== undefined) return;
    const lined = done(work, draw);
    if (refusal(lined, cut) !== undefined) return;
    work = done(lined, cut);
    slashes.push(slash);
  });
  return { work, slashes };
}

// Source of the expectations: trade notes (derived): turns about the bust point are rigid, c = 2 L sin(θ/2), angles add up; the
// tolerances are ours.
describe('whatever is slashed and turned about the bust point', () => {
  it('keeps paper, lengths and angles, and closes on the block again', () => {
    let several = 0;
    fc.assert(
      fc.property(anySeveral, (design) => {
        const { move, places } = design;
        const before = done(startWork(move.block), ...extended(move));
        const { work: cut, slashes } = withSlashes(design);
        fc.pre(slashes.length > 0);
        if (slashes.length > 1) several++;
        const theta = dartAngle(front(before), move.dart)!;
        let work = cut;
        slashes.forEach((slash, i) => {
          const { share, rest } = places[i]!;
          const part = rest ? 'rest' : 'freed';
          work = done(work, turn(move.dart, slash, i === slashes.length - 1 ? CLOSED : { share }, part));
        });
        const piece = front(work);
        expect(state(piece, move.dart)).toBe('closed');
        expect(Math.abs(angleSum([piece], BUST) - angleSum([front(before)], BUST))).toBeLessThan(1e-9);
        expect(Math.abs(pieceArea(piece) / pieceArea(front(before)) - 1)).toBeLessThan(1e-12);
        expect(stretched(edges(piece))).toBeLessThan(1e-9);
        const open = slashes.map((slash) => dartAngle(piece, slash)!);
        expect(Math.abs(open.reduce((sum, a) => sum + a, 0) - theta)).toBeLessThan(1e-9);
        slashes.forEach((slash, i) => {
          const { width, legs } = openingOf(piece, slash);
          expect(Math.abs(legs[0] - legs[1])).toBeLessThan(1e-9);
          expect(Math.abs(width - 2 * legs[0] * Math.sin(open[i]! / 2))).toBeLessThan(1e-9);
        });
        closedBitForBit(piece);
        const ids = outlineOf(piece).map((e) => e.id);
        expect(new Set(ids).size).toBe(ids.length);
        const legs = piece.darts.flatMap((d) => (d.state === 'closed' ? [d.upper, d.lower] : []));
        expect(ids.filter((id) => legs.includes(id))).toEqual([]);
        expect(ids.length).toBe(edges(piece).length - legs.length);
        expect(overlaid(work)).toBeLessThan(1e-6);
      }),
      { numRuns: 300 },
    );
    expect(several).toBeGreaterThan(100);
  }, 300_000);
});

describe('a dart moved more than once', () => {
  it('from waist to side to shoulder lies as if it had gone to the shoulder at once', () => {
    const shoulder = on('right/shoulder', 0.4);
    const once = done(F2('waist'), waist, ...slashed('a', shoulder), turn('right/waist-dart', 'a'));
    const twice = done(
      F2('waist'),
      waist,
      ...slashed('b', on('right/side', 0.5)),
      turn('right/waist-dart', 'b'),
      ...slashed('a', shoulder),
      turn('b', 'a'),
    );
    for (const id of [
      'a/a',
      'a/b',
      'right/neckline',
      'right/armhole',
      'right/waist-inner',
      'right/waist-outer',
    ]) {
      const [e, f] = [findEdge(front(once), id)!, findEdge(front(twice), id)!];
      expect(distance(chainStart(e.chain), chainStart(f.chain))).toBeLessThan(1e-9);
      expect(distance(chainEnd(e.chain), chainEnd(f.chain))).toBeLessThan(1e-9);
    }
    expect(front(twice).darts.map((d) => d.state)).toEqual(['closed', 'closed', 'working']);
    expect(overlaid(twice)).toBeLessThan(1e-6);
    // The side seam is cut in two and joined again by tape: one line on the outline, in two edges.
    const ids = outlineOf(front(twice)).map((e) => e.id);
    expect(ids.slice(ids.indexOf('right/side.1'))[1]).toBe('right/side.2');
  });

  it('goes back to where it came from, and is then as if it had never been moved', () => {
    const start = done(F2('waist'), waist);
    const back = done(
      start,
      ...slashed('a', on('right/armhole', 0.5)),
      turn('right/waist-dart', 'a'),
      turn('a', 'right/waist-dart'),
    );
    expect(state(front(back), 'a')).toBe('closed');
    expect(state(front(back), 'right/waist-dart')).toBe('working');
    expect(front(back).parts.flatMap((p) => p.lines.map((l) => l.id))).toEqual(['taped-a']);
    expect(dartAngle(front(back), 'right/waist-dart')).toBeCloseTo(
      dartAngle(front(start), 'right/waist-dart')!,
      12,
    );
    for (const id of ['right/waist-outer', 'right/side', 'right/shoulder'])
      expect(
        distance(chainStart(findEdge(front(back), id)!.chain), chainStart(findEdge(front(start), id)!.chain)),
      ).toBeLessThan(1e-9);
  });

  it('both darts of the two-dart form go into one slash, or the one into the other without a cut', () => {
    const both = done(F2('two-dart'), waist, { do: 'extend-dart', dart: 'right', to: B() });
    const theta = dartAngle(front(F2('side')), 'right')!;
    const one = done(both, turn('right/waist-dart', 'right'));
    expect(dartAngle(front(one), 'right')).toBeCloseTo(theta, 9);
    expect(overlaid(one)).toBeLessThan(1e-6);
    const slash = done(
      both,
      ...slashed('a', on('right/neckline', 0.5)),
      turn('right/waist-dart', 'a'),
      turn('right', 'a'),
    );
    expect(dartAngle(front(slash), 'a')).toBeCloseTo(theta, 9);
    expect(front(slash).darts.map((d) => d.state)).toEqual(['closed', 'closed', 'working']);
    expect(overlaid(slash)).toBeLessThan(1e-6);
    const later = done(
      F2('two-dart'),
      waist,
      ...slashed('a', on('right/neckline', 0.5)),
      turn('right/waist-dart', 'a'),
      { do: 'extend-dart', dart: 'right', to: B() },
      turn('right', 'a'),
    );
    expect(dartAngle(front(later), 'a')).toBeCloseTo(theta, 9);
    expect(overlaid(later)).toBeLessThan(1e-6);
  });
});

// Source: trade notes (derived): 25° at L 150 is 64.93 mm wide; 10° + 15° at the same L are 26.15 + 39.16. A block with a bust of
// 1100 mm has a dart of B/4 − 2.5 = 25° (Bunka, memory).
describe('a dart of 25° split at 150 mm from the bust point', () => {
  const start = startWork({ measures: { bust: 1100, waist: 900, napeToWaist: 400 }, form: 'waist' });
  /** Where an edge is 150 mm from the bust point, as a fraction of it. */
  function at150(id: string, from: number, to: number): number {
    const { chain } = findEdge(front(start), id)!;
    const bust = landmark(front(start), BUST)!;
    const off = (f: number) => distance(pointAtLength(chain, f * chainLength(chain)), bust) - 150;
    let [a, b] = [from, to];
    expect(off(a) * off(b)).toBeLessThan(0);
    for (let k = 0; k < 60; k++) {
      const m = (a + b) / 2;
      if (off(a) * off(m) <= 0) b = m;
      else a = m;
    }
    return a;
  }

  it('opens by 64.93 mm whole, and by 26.15 and 39.16 mm in two', () => {
    expect(dartAngle(front(start), 'right/waist-dart')).toBeCloseTo(radians(25), 9);
    const [drawA, cutA] = slashed('a', on('centre-front', at150('centre-front', 0.2, 0.5))) as [
      Command,
      Command,
    ];
    const [drawB, cutB] = slashed('b', on('centre-front', at150('centre-front', 0.7, 1))) as [
      Command,
      Command,
    ];
    const whole = done(start, waist, drawA, cutA, turn('right/waist-dart', 'a'));
    expect(openingOf(front(whole), 'a').legs[0]).toBeCloseTo(150, 9);
    expect(openingOf(front(whole), 'a').width).toBeCloseTo(64.93, 2);
    const cut = done(start, waist, drawA, drawB, cutA, cutB);
    const split = done(cut, turn('right/waist-dart', 'a', { share: 0.4 }), turn('right/waist-dart', 'b'));
    const angled = done(
      cut,
      turn('right/waist-dart', 'a', { angle: radians(10) }),
      turn('right/waist-dart', 'b'),
    );
    for (const work of [split, angled]) {
      expect(openingOf(front(work), 'a').width).toBeCloseTo(26.15, 2);
      expect(openingOf(front(work), 'b').width).toBeCloseTo(39.16, 2);
      expect(overlaid(work)).toBeLessThan(1e-6);
    }
  });
});

// Source: Margolis, read at second hand (trade notes): a complete front opened out, both darts closed, left θ = right θ = the half
// block's θ.
describe('asymmetric darts on an opened-out front', () => {
  const LEFT = { landmark: 'left/bust-point' } as const;
  it('run across centre front to the other side’s bust point and keep each side’s angle', () => {
    for (const form of ['side', 'waist'] as const) {
      const dart = form === 'side' ? 'right' : 'right/waist-dart';
      const other = dart.replace('right', 'left');
      const start = done(startWork({ figure: 'F3', form }), { do: 'open-out', about: 'centre-front' });
      const theta = dartAngle(front(start), dart)!;
      const sums = [BUST, 'left/bust-point'];
      const work = done(
        start,
        { do: 'extend-dart', dart, to: B() },
        { do: 'extend-dart', dart: other, to: LEFT },
        { do: 'draw-slash', slash: 'a', from: on('right/neckline', 0.5), to: LEFT },
        {
          do: 'draw-slash',
          slash: 'b',
          from: on(form === 'side' ? 'left/waist' : 'left/waist-inner', 0.6),
          to: B(),
        },
        { do: 'cut-slash', slash: 'a', past: 0 },
        { do: 'cut-slash', slash: 'b', past: 0 },
        { do: 'turn', dart: other, into: 'a', part: 'freed', about: LEFT, by: CLOSED },
        { do: 'turn', dart, into: 'b', part: 'freed', about: B(), by: CLOSED },
      );
      const piece = front(work);
      expect(piece.darts.map((d) => d.state)).toEqual(['closed', 'closed', 'working', 'working']);
      expect(Math.abs(dartAngle(piece, 'a')! - theta)).toBeLessThan(1e-9);
      expect(Math.abs(dartAngle(piece, 'b')! - theta)).toBeLessThan(1e-9);
      for (const bust of sums)
        expect(Math.abs(angleSum([piece], bust) - (2 * Math.PI - theta))).toBeLessThan(1e-9);
      expect(stretched(edges(piece))).toBeLessThan(1e-9);
      closedBitForBit(piece);
      expect(overlaid(work)).toBeLessThan(1e-6);
      expect(refusal(start, { do: 'cut-slash', slash: 'a', past: 0 })).toBe('no-such-line');
    }
  });
});
