import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainEnd, chainStart } from '../../src/lib/geometry/chain.ts';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import { isSimple } from '../../src/lib/geometry/outline.ts';
import { radians } from '../../src/lib/geometry/trig.ts';
import { dartAngle, pieceArea, slip } from '../../src/lib/pattern/measure.ts';
import { chainOf, findEdge, landmark, legIds, outlineOf, partOf } from '../../src/lib/pattern/outline.ts';
import { overlay } from '../../src/lib/pattern/overlay.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { replayDocument } from '../../src/lib/recipe/document.ts';
import { parseRecipe } from '../../src/lib/recipe/parse.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Anchor, Command, Recipe, TurnBy, Work } from '../../src/lib/recipe/types.ts';
import { real } from '../support/real.ts';
import '../support/seed.ts';
import { B, done, edgesOf, front, on, openingOf, outlinesApart, refusal, slashed } from './darts.ts';

// What is refused, how things are named and which sheet turns are the project's own rules; sources of other expectations stand by them.
const CLOSED: TurnBy = { until: 'legs-meet' };
const WAIST = 'right/waist-dart';
const start = startWork({ figure: 'F2', form: 'waist' });
const working = done(start, { do: 'extend-dart', dart: WAIST, to: B() });
const shoulder = on('right/shoulder', 0.5);
const turn = (more: Partial<Extract<Command, { do: 'turn' }>> = {}): Command => ({
  do: 'turn',
  dart: WAIST,
  into: 'slash',
  part: 'freed',
  about: B(),
  by: CLOSED,
  ...more,
});
const draw = (from: Anchor, to: Anchor = B(), via?: Anchor, slash = 'slash'): Command => ({
  do: 'draw-slash',
  slash,
  from,
  to,
  ...(via && { via }),
});
const cut = (past = 0, slash = 'slash'): Command => ({ do: 'cut-slash', slash, past });
const detail = (work: Work, command: Command) => {
  const next = apply(work, command);
  return 'refused' in next ? next.refused : undefined;
};

describe('a slash line', () => {
  it('begins on an edge, ends at the bust point, and is kept as drawn', () => {
    const drawn = done(working, draw(shoulder));
    expect(front(drawn).parts[0]!.lines.map((l) => [l.id, l.kind, l.chain.length])).toEqual([
      ['slash', 'slash', 1],
    ]);
    expect(drawn.lines).toMatchObject([{ id: 'slash', kind: 'slash', ends: ['right/shoulder', undefined] }]);
    expect(samePoint(chainEnd(drawn.lines[0]!.chain), landmark(front(drawn), 'right/bust-point')!)).toBe(
      true,
    );
  });

  it('is drawn anew in place of the old one until it is cut, and runs over an alternate pivot', () => {
    const again = done(working, draw(shoulder), draw(on('right/armhole', 0.5), B(), B(-20, -10)));
    expect(front(again).parts[0]!.lines).toHaveLength(1);
    expect(again.lines).toHaveLength(1);
    expect(again.lines[0]!.chain).toHaveLength(2);
    expect(refusal(done(again, cut()), draw(shoulder))).toBe('line-already-cut');
  });

  it('goes by no name that is taken or kept for what is to come', () => {
    const lined = done(working, {
      do: 'draw-line',
      line: 'line',
      points: [shoulder, { landmark: 'right/bust-point', dx: 60, dy: 0 }, on('right/waist-inner', 0.2)],
    });
    const names = [
      'line',
      'centre-front',
      'right/side',
      'freed-a',
      'taped-a',
      'gap/a',
      'right/new',
      'a.1',
      'a@b',
    ];
    for (const slash of [...names, WAIST])
      expect(refusal(lined, draw(shoulder, B(), undefined, slash))).toBe('name-taken');
    expect(
      refusal(lined, {
        do: 'pivot',
        dart: WAIST,
        slash: 'line',
        from: shoulder,
        about: B(),
        by: CLOSED,
        part: 'freed',
      }),
    ).toBe('name-taken');
  });

  it('is refused off the edges, through a dart, out of the paper, or without length', () => {
    expect(refusal(working, draw(B(60, 0)))).toBe('slash-off-edge');
    expect(refusal(working, draw(on(WAIST.replace('dart', 'dart-side'), 0.5)))).toBe('slash-meets-dart');
    // From one side of the waist dart to a point beyond the other.
    expect(refusal(working, draw(on('right/waist-inner', 0.8), B(-60, 60)))).toBe('slash-meets-dart');
    // A straight line from under the arm leaves through the hollow of the armhole.
    expect(refusal(working, draw(on('right/armhole', 0.02), on('right/armhole', 0.98)))).toBe(
      'slash-leaves-piece',
    );
    expect(refusal(working, draw(shoulder, shoulder))).toBe('line-without-length');
    expect(refusal(working, draw(shoulder, B(), { landmark: 'right/nothing' }))).toBe('no-such-place');
    expect(refusal(working, draw(on('right/none', 0.5)))).toBe('no-such-place');
    expect(refusal(startWork({ figure: 'F2' }), draw(shoulder))).toBe('not-opened');
  });
});

describe('cutting a slash', () => {
  const slashedOnce = done(working, draw(shoulder), cut());

  it('makes a dart of it: two sheets that hang in the tip, the banks its legs', () => {
    const piece = front(slashedOnce);
    expect(piece.parts.map((p) => p.id)).toEqual(['front', 'freed-slash']);
    expect(piece.parts[0]!.landmarks['neck-centre']).toBeDefined();
    expect(piece.hinges).toEqual([{ dart: 'slash', parts: ['freed-slash', 'front'], intact: true }]);
    const dart = piece.darts.find((d) => d.id === 'slash')!;
    expect(dart).toMatchObject({
      side: 'right',
      state: 'working',
      residual: 0,
      bustPoint: 'right/bust-point',
    });
    const bust = landmark(piece, 'right/bust-point')!;
    const [into, outOf] = legIds(dart).map((id) => findEdge(piece, id)!);
    expect(samePoint(chainEnd(into!.chain), bust) && samePoint(chainStart(outOf!.chain), bust)).toBe(true);
    // Bank a lies on the left hand of someone who walks from the shoulder down to the bust point: towards the neck.
    expect(partOf(piece, 'slash/a')!.landmarks['right/neck-point'] === undefined).toBe(
      partOf(piece, 'slash/b')!.landmarks['right/neck-point'] !== undefined,
    );
    expect([into, outOf].map((e) => [e!.role, e!.partner, e!.dart, e!.origin.edge])).toEqual([
      ['dart-leg', outOf!.id, 'slash', 'slash'],
      ['dart-leg', into!.id, 'slash', 'slash'],
    ]);
  });

  it('ends in the tip of a working dart and nowhere else', () => {
    expect(detail(start, cut())).toEqual({ code: 'no-such-line', detail: { line: 'slash' } });
    // The sewn dart stops short of the bust point: the slash to the bust point has nothing to hang in.
    const sewn = done(start, draw(shoulder));
    expect(detail(sewn, cut())!.code).toBe('slash-misses-dart');
    const backOff = distance(
      landmark(front(start), 'right/waist-sewn-point')!,
      landmark(front(start), 'right/bust-point')!,
    );
    expect(detail(sewn, cut())!.detail!['mm']).toBeCloseTo(backOff, 9);
    expect(detail(done(working, draw(shoulder, B(3, -4))), cut())!.detail!['mm']).toBeCloseTo(5, 9);
    expect(refusal(done(start, draw(shoulder, { landmark: 'right/waist-sewn-point' })), cut())).toBe(
      'slash-misses-dart',
    );
    // Legs drawn after the line was, to the very point in which it ends.
    expect(refusal(done(sewn, { do: 'extend-dart', dart: WAIST, to: B() }), cut())).toBeUndefined();
  });

  it('is put on to a tip that it all but meets, and its record with it', () => {
    const near = done(
      start,
      draw(shoulder, B(6e-5, -4e-5)),
      { do: 'extend-dart', dart: WAIST, to: B() },
      cut(),
    );
    const bust = landmark(front(near), 'right/bust-point')!;
    expect(samePoint(findEdge(front(near), 'slash/a')!.chain[0]!.a, bust)).toBe(true);
    expect(samePoint(chainEnd(near.lines[0]!.chain), bust)).toBe(true);
    const lines = near.lines.map(({ id, chain }) => ({ id, chain, feet: {} }));
    for (const fit of overlay(front(near), near.opened!, lines)) expect(fit.residual).toBeLessThan(1e-6);
  });

  it('stops short with a refusal, and through the tip without the hinge', () => {
    const drawn = done(working, draw(shoulder));
    expect(detail(drawn, cut(-3))).toEqual({ code: 'slash-stops-short', detail: { dart: 'slash', mm: 3 } });
    expect(front(done(drawn, cut(2))).hinges[0]!.intact).toBe(false);
    expect(refusal(slashedOnce, cut())).toBe('line-already-cut');
  });

  it('does not go across another line, nor across another slash', () => {
    const crossed = done(
      working,
      draw(shoulder, B(), B(-30, -40)),
      draw(on('right/armhole', 0.7), B(), B(30, -45), 'other'),
    );
    expect(refusal(crossed, cut())).toBe('slash-crosses-line');
  });
});

describe('turning into a slash', () => {
  const ready = done(working, draw(shoulder), cut());

  it('turns the side without centre front, or the rest, and gives one shape', () => {
    const freed = front(done(ready, turn()));
    const rest = front(done(ready, turn({ part: 'rest' })));
    expect(freed.parts.map((p) => [p.id, p.grain])).toEqual([
      ['front', 'kept'],
      ['freed-slash', 'void'],
    ]);
    expect(rest.parts.map((p) => [p.id, p.grain])).toEqual([
      ['front', 'void'],
      ['freed-slash', 'kept'],
    ]);
    for (const piece of [freed, rest])
      for (const fit of overlay(
        piece,
        start.opened!,
        ready.lines.map(({ id, chain }) => ({ id, chain, feet: {} })),
      ))
        expect(fit.residual).toBeLessThan(1e-6);
    expect(outlineOf(freed).map((e) => e.id)).toEqual(outlineOf(rest).map((e) => e.id));
    expect(pieceArea(rest)).toBeCloseTo(pieceArea(freed), 8);
    expect(outlinesApart(front(done(ready, turn({ part: 'front' }))), rest)).toBe(0);
  });

  it('tells what happened, with the slash that opened', () => {
    const [fact] = done(ready, turn()).turns;
    const theta = dartAngle(front(ready), WAIST)!;
    expect(fact).toMatchObject({ dart: WAIST, into: 'slash', part: 'freed-slash', residual: 0 });
    expect(Math.abs(fact!.angle)).toBeCloseTo(theta, 9);
  });

  it('is refused where a cut does not lie between the legs', () => {
    expect(refusal(working, turn({ into: WAIST }))).toBe('not-slashed');
    expect(refusal(working, turn())).toBe('no-such-dart');
    expect(refusal(ready, turn({ into: WAIST }))).toBe('not-between');
    expect(refusal(ready, turn({ part: 'sleeve' }))).toBe('no-such-part');
    expect(refusal(ready, turn({ about: { landmark: 'right/waist-dart-side-end' } }))).toBe('pivot-on-leg');
    expect(refusal(ready, turn({ dart: 'none' }))).toBe('no-such-dart');
    const both = done(
      startWork({ figure: 'F2', form: 'side' }),
      { do: 'open-out', about: 'centre-front' },
      { do: 'extend-dart', dart: 'right', to: B() },
      draw(shoulder),
      cut(),
    );
    expect(refusal(both, turn({ dart: 'left' }))).toBe('not-slashed');
    expect(refusal(both, turn({ dart: 'right', into: 'left' }))).toBe('not-between');
  });

  it('without the word into turns as before, and every dart whose legs it parts is settled', () => {
    const plain = {
      do: 'turn',
      dart: 'slash',
      part: 'freed',
      about: B(),
      by: { angle: done(ready, turn()).turns[0]!.angle },
    } as const;
    const without = done(ready, plain);
    expect(refusal(ready, turn({ dart: 'slash' }))).toBe('not-between');
    expect(front(without).darts.map((d) => [d.id, d.state])).toEqual([
      [WAIST, 'closed'],
      ['slash', 'working'],
    ]);
    expect(outlinesApart(front(without), front(done(ready, turn())))).toBeLessThan(1e-9);
  });

  it('about a pin that slipped leaves a gap that shows, and each sheet still is that of the block', () => {
    const slipped = done(ready, turn({ about: B(6, 0) }));
    const piece = front(slipped);
    expect(piece.darts.map((d) => d.state)).toEqual(['working', 'working']);
    // Source: derived; a pin r beside the bust point moves it by 2 r sin(α/2) when the part turns by α.
    const angle = Math.abs(slipped.turns[0]!.angle);
    expect(slip(piece, WAIST)).toBeCloseTo(12 * Math.sin(angle / 2), 9);
    const outline = outlineOf(piece);
    outline.forEach((e, i) =>
      expect(samePoint(chainEnd(e.chain), chainStart(outline[(i + 1) % outline.length]!.chain))).toBe(true),
    );
    expect(outline.some((e) => e.id.startsWith('gap/'))).toBe(true);
    for (const fit of overlay(
      piece,
      start.opened!,
      slipped.lines.map(({ id, chain }) => ({ id, chain, feet: {} })),
    ))
      expect(fit.residual).toBeLessThan(1e-6);
    const pinned = done(working, {
      do: 'pivot',
      dart: WAIST,
      slash: 'slash',
      from: shoulder,
      about: B(6, 0),
      by: CLOSED,
      part: 'freed',
    });
    expect(outlinesApart(front(pinned), piece)).toBeLessThan(1e-9);
  });

  it('by nothing tapes nothing: a slash is not closed by lying on itself', () => {
    const still = front(done(ready, turn({ by: { share: 0 } })));
    expect(still.darts.map((d) => d.state)).toEqual(['working', 'working']);
    expect(still.parts.flatMap((p) => p.lines)).toEqual([]);
  });

  it('a share is a share of what is open at that moment', () => {
    const theta = dartAngle(front(ready), WAIST)!;
    const half = done(ready, turn({ by: { share: 0.5 } }));
    const again = done(half, turn({ by: { share: 0.5 } }));
    expect(dartAngle(front(half), WAIST)).toBeCloseTo(theta / 2, 12);
    expect(dartAngle(front(again), WAIST)).toBeCloseTo(theta / 4, 12);
    expect(dartAngle(front(again), 'slash')).toBeCloseTo((3 * theta) / 4, 12);
  });
});

// Source: dresspatternmaking.com, style 29 (read, trade notes): alternate pivots for parallel darts lie on a circle round the bust point,
// 3/4 in usual. That each still opens by its own angle at the bust point is derived.
it('parallel darts over alternate pivots open by their shares, each with legs of one length', () => {
  const places = [0.25, 0.5, 0.75];
  const pivots = [B(13, -13.9), undefined, B(-13, -13.9)];
  let work = working;
  places.forEach(
    (at, i) => (work = done(work, draw(on('right/shoulder', 1 - at), B(), pivots[i], `slash-${i + 1}`))),
  );
  places.forEach((_, i) => (work = done(work, cut(0, `slash-${i + 1}`))));
  const theta = dartAngle(front(work), WAIST)!;
  const by: readonly TurnBy[] = [{ share: 1 / 3 }, { share: 1 / 2 }, CLOSED];
  by.forEach((one, i) => (work = done(work, turn({ into: `slash-${i + 1}`, by: one }))));
  const piece = front(work);
  for (const slash of ['slash-1', 'slash-2', 'slash-3']) {
    expect(dartAngle(piece, slash)).toBeCloseTo(theta / 3, 9);
    const { width, legs } = openingOf(piece, slash);
    expect(legs[0]).toBeCloseTo(legs[1], 9);
    expect(width).toBeCloseTo(2 * legs[0] * Math.sin(theta / 6), 9);
  }
  expect(piece.parts).toHaveLength(4);
});

it('an outline with open darts crosses itself nowhere but in the bust point', () => {
  const work = done(
    working,
    ...slashed('a', shoulder),
    ...slashed('b', on('right/side', 0.4)),
    turn({ into: 'a', by: { share: 0.4 } }),
    turn({ into: 'b' }),
  );
  const bust = landmark(front(work), 'right/bust-point')!;
  const outline = outlineOf(front(work));
  const tips = outline.filter((e) => samePoint(chainStart(e.chain), bust)).length;
  expect(tips).toBe(2);
  expect(isSimple(chainOf(outline))).toBe(false);
  const turned = done(working, ...slashed('a', shoulder), turn({ into: 'a' }));
  expect(isSimple(chainOf(outlineOf(front(turned))))).toBe(true);
});

describe('a recipe that moves darts', () => {
  const recipe: Recipe = {
    format: 'pin-and-pivot/recipe',
    version: 1,
    block: { figure: 'F2', form: 'two-dart' },
    fabric: 'knit',
    seed: 1,
    commands: [
      { do: 'extend-dart', dart: WAIST, to: B() },
      { do: 'extend-dart', dart: 'right', to: B() },
      draw(shoulder, B(), B(-8, -12)),
      cut(),
      turn({ by: { share: 0.25 } }),
      {
        do: 'pivot',
        dart: 'right',
        slash: 'neck',
        from: on('right/neckline', 0.5),
        about: B(),
        by: { angle: radians(-4) },
        part: 'freed',
      },
      turn({ into: 'neck' }),
    ],
  };

  it('is read from its own text, and replays to the same bytes', () => {
    const parsed = parseRecipe(toText(recipe));
    if (!('ok' in parsed)) throw new Error(JSON.stringify(parsed.problems));
    expect(parsed.ok).toEqual(recipe);
    expect(replay(parsed.ok).unfollowed).toEqual([]);
    const first = JSON.stringify(replayDocument(recipe));
    expect(JSON.stringify(replayDocument(parsed.ok))).toBe(first);
    const document = JSON.parse(first) as { lines: { kind?: string }[]; turns: { into?: string }[] };
    expect(document.lines.map((l) => l.kind)).toEqual(['slash', 'slash']);
    expect(document.turns.map((t) => t.into)).toEqual(['slash', 'neck', 'neck']);
  });

  it('on every practice figure can be followed', () => {
    for (const figure of ['F1', 'F2', 'F3', 'F4', 'F5'])
      expect(replay({ ...recipe, block: { figure, form: 'two-dart' } }).unfollowed).toEqual([]);
  });
});

describe('whatever is asked for, in any order', () => {
  const edges = edgesOf('two-dart');
  const slashIds = fc.constantFrom('slash', 'slash-1', 'neck');
  const dartIds = fc.constantFrom('right', WAIST, 'slash', 'slash-1', 'neck', 'left');
  const anchor: fc.Arbitrary<Anchor> = fc.oneof(
    fc
      .tuple(fc.constantFrom(...edges, 'slash', 'slash/a', 'right/shoulder.1'), real(0, 1))
      .map(([id, at]) => on(id, at)),
    fc.constant(B()),
    fc.tuple(real(-40, 40), real(-40, 40)).map(([dx, dy]) => B(dx, dy)),
  );
  const from = fc.oneof(
    { weight: 4, arbitrary: fc.tuple(fc.constantFrom(...edges), real(0, 1)).map(([id, at]) => on(id, at)) },
    { weight: 1, arbitrary: anchor },
  );
  const bust = fc.oneof({ weight: 12, arbitrary: fc.constant(B()) }, { weight: 1, arbitrary: anchor });
  const by: fc.Arbitrary<TurnBy> = fc.oneof(
    fc.constant(CLOSED),
    real(-7, 7).map((angle) => ({ angle })),
    real(0, 1).map((share) => ({ share })),
  );
  const part = fc.constantFrom('freed' as const, 'rest' as const);
  const command: fc.Arbitrary<Command> = fc.oneof(
    fc.record({ do: fc.constant('extend-dart' as const), dart: fc.constantFrom('right', WAIST), to: bust }),
    fc
      .tuple(slashIds, anchor, fc.option(anchor, { freq: 2 }), bust)
      .map(([slash, begin, via, to]) => draw(begin, to, via ?? undefined, slash)),
    fc.record({
      do: fc.constant('cut-slash' as const),
      slash: slashIds,
      past: fc.constantFrom(0, 0, 0, 2, -1),
    }),
    fc.record({ do: fc.constant('turn' as const), dart: dartIds, into: dartIds, part, about: bust, by }),
    fc.record({ do: fc.constant('turn' as const), dart: dartIds, part, about: bust, by }),
    fc.record({
      do: fc.constant('pivot' as const),
      dart: dartIds,
      slash: slashIds,
      from,
      about: bust,
      by,
      part,
    }),
    fc.constant<Command>({ do: 'open-out', about: 'centre-front' }),
  );

  it('nothing throws; paper, sheets and outline stay in order', () => {
    let cuts = 0;
    let turns = 0;
    fc.assert(
      fc.property(fc.boolean(), fc.array(command, { minLength: 6, maxLength: 24 }), (both, commands) => {
        let work = startWork({ figure: 'F2', form: 'two-dart' });
        if (both)
          work = done(
            work,
            ...['right', WAIST].map((dart) => ({ do: 'extend-dart', dart, to: B() }) as const),
          );
        for (const one of commands) {
          const before = work;
          const next = apply(work, one);
          if ('refused' in next) continue;
          work = next.work;
          const piece = front(work);
          if (one.do === 'cut-slash' || one.do === 'pivot') cuts++;
          if (one.do === 'turn') turns++;
          if (one.do === 'turn' || one.do === 'cut-slash' || one.do === 'pivot')
            expect(Math.abs(pieceArea(piece) / pieceArea(front(before)) - 1)).toBeLessThan(1e-9);
          const ids = piece.parts.flatMap((p) => p.edges.map((e) => e.id));
          expect(new Set(ids).size).toBe(ids.length);
          expect(new Set(piece.parts.map((p) => p.id)).size).toBe(piece.parts.length);
          expect(piece.hinges.length).toBeLessThan(Math.max(1, piece.parts.length));
          for (const h of piece.hinges) {
            const dart = piece.darts.find((d) => d.id === h.dart)!;
            const sheets = legIds(dart).map((id) => partOf(piece, id)!.id);
            expect([...sheets].sort()).toEqual([...h.parts].sort());
          }
          const lines = work.lines.map(({ id, chain }) => ({ id, chain, feet: {} }));
          for (const fit of overlay(piece, work.opened!, lines)) {
            expect(fit.residual).toBeLessThan(1e-6);
            expect(fit.missing).toEqual([]);
          }
          const outline = outlineOf(piece);
          outline.forEach((e, i) =>
            expect(samePoint(chainEnd(e.chain), chainStart(outline[(i + 1) % outline.length]!.chain))).toBe(
              true,
            ),
          );
        }
      }),
      { numRuns: 1500 },
    );
    expect(cuts).toBeGreaterThan(200);
    expect(turns).toBeGreaterThan(200);
  }, 180_000);
});
