import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { chainEnd, chainStart } from '../../src/lib/geometry/chain.ts';
import { isSimple } from '../../src/lib/geometry/outline.ts';
import { samePoint } from '../../src/lib/geometry/point.ts';
import { tangentAt } from '../../src/lib/geometry/segment.ts';
import { cutLine } from '../../src/lib/pattern/allowance.ts';
import { angleSum } from '../../src/lib/pattern/angles.ts';
import { edgeLength } from '../../src/lib/pattern/edge-length.ts';
import { pieceArea } from '../../src/lib/pattern/measure.ts';
import { overlay } from '../../src/lib/pattern/overlay.ts';
import { slivers } from '../../src/lib/pattern/slivers.ts';
import { chainOf, findEdge, outlineOf, seamGroups } from '../../src/lib/pattern/outline.ts';
import { seamOf } from '../../src/lib/pattern/seam.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { walkSeam } from '../../src/lib/pattern/walk.ts';
import { pieceById } from '../../src/lib/recipe/pieces.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Command, Work } from '../../src/lib/recipe/types.ts';
import { real } from '../support/real.ts';
import { anyMove, B, done, extended, front, on, refusal, slashed, type Move } from './darts.ts';

vi.setConfig({ testTimeout: 120_000 });

/** A move that leaves a share of the dart where it was; undefined where that slash cannot be drawn. */
function shared(move: Move, share: number): Work | undefined {
  const ready = done(startWork(move.block), ...extended(move));
  const [draw, cut] = slashed('slash', on(move.edge, move.at)) as [Command, Command];
  if (refusal(ready, draw) !== undefined) return undefined;
  return done(ready, draw, cut, {
    do: 'turn',
    dart: move.dart,
    into: 'slash',
    part: 'freed',
    about: B(),
    by: { share },
  });
}

const ROLES = ['centre-front', 'waist', 'side', 'armhole', 'shoulder', 'neckline'] as const;
const sewn = (pieces: readonly Piece[], role: string): number => {
  let sum = 0;
  for (const piece of pieces)
    for (const e of outlineOf(piece))
      if (e.role === role)
        sum += edgeLength(e) - (piece.fullness?.find((f) => f.edge === e.id)?.fullness ?? 0);
  return sum;
};

/** An outline without gaps, with an allowance all round and a cut line that follows it. */
function soundAndAllowed(work: Work, id: string): void {
  const piece = pieceById(work, id)!;
  const outline = outlineOf(piece);
  outline.forEach((e, i) =>
    expect(samePoint(chainEnd(e.chain), chainStart(outline[(i + 1) % outline.length]!.chain))).toBe(true),
  );
  expect(new Set(outline.map((e) => e.id)).size).toBe(outline.length);
  const groups = [...new Set(seamGroups(piece).map((g) => g.id))];
  const allowed = done(
    work,
    ...groups.map((group) => ({ do: 'allow', piece: id, group, width: 10 }) as const),
    { do: 'carry-notches', piece: id },
    { do: 'label', piece: id, name: 'A piece', cut: 2, rightSideUp: false },
  );
  const cut = cutLine(pieceById(allowed, id)!)!;
  expect(isSimple(cut.cut)).toBe(true);
  expect(Object.keys(cut.groups).map((g) => g.replace(/\.2$/, ''))).toEqual(expect.arrayContaining(groups));
}

describe('fullness at an edge', () => {
  // Source: derived (ours, what fullness is): length of the cut edge less the fullness is what was sewn there.
  it('keeps the sewn length of each seam and the paper round the bust point, on any block and edge', () => {
    let tried = 0;
    const any = fc.tuple(anyMove, real(0, 40), real(0, 40), fc.constantFrom('gathers', 'ease', 'tucks'));
    fc.assert(
      fc.property(any, ([move, before, after, as]) => {
        const work = shared(move, 1);
        if (work === undefined) return;
        const command: Command = { do: 'fullness', dart: 'slash', as, before, after, tucks: 4 };
        if (refusal(work, command) !== undefined) {
          // Only where the edge is shorter than that.
          expect(refusal(work, command)).toBe('fullness-too-long');
          return;
        }
        tried++;
        const full = done(work, command);
        const piece = front(full);
        for (const role of ROLES)
          expect(Math.abs(sewn([piece], role) - sewn([front(work)], role))).toBeLessThan(1e-9);
        expect(angleSum([piece], 'right/bust-point')).toBe(angleSum([front(work)], 'right/bust-point'));
        const [f] = piece.fullness!;
        const edge = findEdge(piece, f!.edge)!;
        expect(Math.abs(edgeLength(edge) - before - after - f!.fullness)).toBeLessThan(1e-9);
        const outline = outlineOf(piece);
        const i = outline.indexOf(edge);
        const head = outline.at(i - 1)!.chain.at(-1)!;
        const tail = outline[(i + 1) % outline.length]!.chain[0]!;
        for (const [s, u] of [
          [head, edge.chain[0]!],
          [edge.chain.at(-1)!, tail],
        ] as const) {
          const [p, q] = [tangentAt(s, 1), tangentAt(u, 0)];
          expect(Math.abs(p.x * q.y - p.y * q.x)).toBeLessThan(1e-9);
          expect(p.x * q.x + p.y * q.y).toBeGreaterThan(0);
        }
        expect(outline.some((e) => e.dart === 'slash' && e.role === 'dart-leg')).toBe(false);
        expect(piece.notches.map((n) => n.id)).toEqual(['slash-gather-1', 'slash-gather-2']);
      }),
      { numRuns: 300 },
    );
    expect(tried).toBeGreaterThan(120);
  });

  it('is walked as what it is: the gathered side matches the back but for its fullness', () => {
    for (const figure of ['F1', 'F2', 'F3', 'F4', 'F5']) {
      const work = done(
        startWork({ figure, form: 'waist' }),
        { do: 'extend-dart', dart: 'right/waist-dart', to: B() },
        ...slashed('slash', on('right/side', 0.5)),
        { do: 'turn', dart: 'right/waist-dart', into: 'slash', part: 'freed', about: B(), by: { share: 1 } },
        { do: 'fullness', dart: 'slash', as: 'gathers', before: 25, after: 25 },
      );
      const seam = seamOf(work.pieces, 'right/side')!;
      // From the underarm to the first notch, between the two, and on to the waist; all of the fullness lies between the notches.
      const steps = walkSeam(seam.a, seam.b);
      const full = front(work).fullness![0]!.fullness;
      expect(steps).toHaveLength(3);
      steps.forEach(({ eased, difference }, i) => {
        expect(Math.abs(eased - (i === 1 ? full : 0))).toBeLessThan(1e-9);
        expect(Math.abs(difference - eased)).toBeLessThan(1e-9);
      });
      soundAndAllowed(work, 'front');
    }
  });

  it('spans several openings of one seam with one edge', () => {
    const start = startWork({ figure: 'F2', form: 'waist' });
    const draw = [0.4, 0.5, 0.6].map((at, i) => slashed(`s${i}`, on('right/shoulder', at)));
    const turns = ['s0', 's1', 's2'].map(
      (into, i) =>
        ({
          do: 'turn',
          dart: 'right/waist-dart',
          into,
          part: 'freed',
          about: B(),
          by: { share: 1 / (3 - i) },
        }) as const,
    );
    const work = done(
      start,
      { do: 'extend-dart', dart: 'right/waist-dart', to: B() },
      ...draw.map((two) => two[0]!),
      ...draw.map((two) => two[1]!),
      ...turns,
    );
    const shoulder = sewn([front(start)], 'shoulder');
    const full = done(work, { do: 'fullness', dart: 's1', as: 'gathers', before: 30, after: 30 });
    const [f] = front(full).fullness!;
    expect([...f!.darts].sort()).toEqual(['s0', 's1', 's2']);
    expect(Math.abs(sewn([front(full)], 'shoulder') - shoulder)).toBeLessThan(1e-9);
    expect(outlineOf(front(full)).filter((e) => e.role === 'dart-leg')).toEqual([]);
    soundAndAllowed(full, 'front');
    expect(refusal(full, { do: 'fullness', dart: 's2', as: 'ease', before: 5, after: 5 })).toBe(
      'already-gathered',
    );
    expect(refusal(full, { do: 'cap', dart: 's0', fold: 'side' })).toBe('already-gathered');
  });

  it('is refused where the seam is too short, a notch stands in the way, or nothing is open', () => {
    const start = done(startWork({ figure: 'F2', form: 'waist' }), {
      do: 'extend-dart',
      dart: 'right/waist-dart',
      to: B(),
    });
    const at = (before: number, after: number, more: object = {}) =>
      ({ do: 'fullness', dart: 'right/waist-dart', as: 'gathers', before, after, ...more }) as Command;
    expect(refusal(start, at(400, 20))).toBe('fullness-too-long');
    expect(refusal(start, at(20, 400))).toBe('fullness-too-long');
    expect(refusal(start, at(-1, 20))).toBe('bad-length');
    expect(refusal(start, at(20, 20, { as: 'tucks' }))).toBe('bad-count');
    expect(refusal(start, at(20, 20, { as: 'tucks', tucks: 0 }))).toBe('bad-count');
    const cut = done(start, ...slashed('slash', on('right/shoulder', 0.5)));
    expect(refusal(cut, { do: 'fullness', dart: 'slash', as: 'ease', before: 10, after: 10 })).toBe(
      'no-fullness',
    );
    const full = done(start, at(20, 20));
    expect(refusal(full, at(20, 20))).toBe('already-gathered');
    expect(refusal(full, { do: 'extend-dart', dart: 'right/waist-dart', to: B(3) })).toBe('already-finished');
    expect(refusal(full, { do: 'open-out', about: 'centre-front' })).toBe('already-drawn-on');
  });
});

describe('finished pieces', () => {
  // Source: trade notes (read: NIMI p. 195; Erwin p. 31): with every dart closed the sheets lie on the block again.
  it('lie on the block again but for what was drawn over or parted', () => {
    for (const figure of ['F1', 'F2', 'F3', 'F4', 'F5']) {
      const work = done(
        startWork({ figure, form: 'waist' }),
        { do: 'extend-dart', dart: 'right/waist-dart', to: B() },
        ...slashed('slash', on('right/side', 0.5)),
        {
          do: 'turn',
          dart: 'right/waist-dart',
          into: 'slash',
          part: 'freed',
          about: B(),
          by: { share: 0.5 },
        },
      );
      const ends: Command[][] = [
        [{ do: 'fullness', dart: 'slash', as: 'gathers', before: 25, after: 25 }],
        [
          { do: 'back-off', dart: 'slash', by: 25 },
          { do: 'cap', dart: 'slash', fold: 'down' },
          { do: 'cap', dart: 'right/waist-dart', fold: 'centre' },
        ],
        [{ do: 'part-at-darts', darts: ['slash', 'right/waist-dart'] }],
      ];
      for (const end of ends) {
        const { opened, lines, pieces } = done(work, ...end);
        for (const piece of pieces.filter((p) => p.id !== 'back'))
          for (const fit of overlay(piece, opened!, lines)) expect(fit.residual).toBeLessThan(1e-6);
        if (end[0]!.do !== 'part-at-darts') expect(slivers(front(done(work, ...end)))).toEqual([]);
      }
    }
  });
});

describe('a princess line', () => {
  // Source: trade notes (read: Watkins): no way of cutting changes the angle that is missing round the bust point.
  it('parts the front along two darts of one bust point into partners, and nothing moves', () => {
    let tried = 0;
    fc.assert(
      fc.property(anyMove, real(0, 1), ({ both: _, ...rest }, share) => {
        const move = { ...rest, both: true };
        const work = shared(move, share);
        if (work === undefined) return;
        const whole = front(work);
        const command: Command = { do: 'part-at-darts', darts: ['slash', move.dart] };
        const code = refusal(work, command);
        if (code !== undefined) {
          // Once everything was turned, the dart that it came from is taped.
          expect(code).toBe('dart-is-closed');
          return;
        }
        tried++;
        const parted = done(work, command);
        const [centre, side] = ['front-centre', 'front-side'].map((id) => pieceById(parted, id)!);
        expect(parted.pieces.map((p) => p.id)).toEqual(['front-centre', 'front-side', 'back']);
        expect(Math.abs(pieceArea(centre!) + pieceArea(side!) - pieceArea(whole))).toBeLessThan(1e-6);
        const sum = angleSum([centre!, side!], 'right/bust-point');
        expect(Math.abs(sum - angleSum([whole], 'right/bust-point'))).toBeLessThan(1e-12);
        for (const role of ROLES)
          expect(Math.abs(sewn([centre!, side!], role) - sewn([whole], role))).toBeLessThan(1e-9);
        for (const n of [1, 2]) {
          const bank = (x: string) => {
            const piece = [centre!, side!].find((p) => findEdge(p, `princess/${n}/${x}`))!;
            return { piece, edge: findEdge(piece, `princess/${n}/${x}`)! };
          };
          const [a, b] = [bank('a'), bank('b')];
          expect(a.piece).not.toBe(b.piece);
          expect([a.edge.partner, b.edge.partner]).toEqual([b.edge.id, a.edge.id]);
          expect(Math.abs(edgeLength(a.edge) - edgeLength(b.edge))).toBeLessThan(1e-9);
        }
        const seam = seamOf(parted.pieces, 'style-line')!;
        const walked = walkSeam(seam.a, seam.b);
        expect(walked.map((w) => w.to)).toEqual(['princess/1', 'end']);
        for (const { difference } of walked) expect(Math.abs(difference)).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
    expect(tried).toBeGreaterThan(120);
  });

  const princess = (figure: string): Work =>
    done(
      startWork({ figure, form: 'waist' }),
      { do: 'extend-dart', dart: 'right/waist-dart', to: B() },
      ...slashed('slash', on('right/shoulder', 0.5)),
      { do: 'turn', dart: 'right/waist-dart', into: 'slash', part: 'freed', about: B(), by: { share: 0.5 } },
      { do: 'part-at-darts', darts: ['slash', 'right/waist-dart'] },
    );

  it('is smoothed at the bust point, and both pieces can be allowed, walked and labelled', () => {
    for (const figure of ['F1', 'F2', 'F3', 'F4', 'F5']) {
      const work = done(
        princess(figure),
        { do: 'smooth-seam', piece: 'front-centre', at: 'right/bust-point', reach: 40 },
        { do: 'smooth-seam', piece: 'front-side', at: 'right/bust-point', reach: 40 },
      );
      for (const id of ['front-centre', 'front-side']) {
        soundAndAllowed(work, id);
        expect(isSimple(chainOf(outlineOf(pieceById(work, id)!)))).toBe(true);
        expect(seamGroups(pieceById(work, id)!).filter((g) => g.id === 'style-line')).toHaveLength(1);
      }
      const seam = seamOf(work.pieces, 'style-line')!;
      const [up, down] = walkSeam(seam.a, seam.b);
      // Both corners were cut, the sharper one by more.
      const shorter = ['front-centre', 'front-side'].map((id) => pieceById(work, id)!.smoothed![0]!.shorter);
      const differs = Math.abs(up!.difference + down!.difference);
      expect(Math.abs(differs - Math.abs(shorter[0]! - shorter[1]!))).toBeLessThan(1e-9);
      // The shoulder and the waist run over both pieces.
      const shoulder = seamOf(work.pieces, 'right/shoulder')!;
      expect(shoulder.a.pieces).toEqual(['front-centre', 'front-side']);
      for (const w of walkSeam(shoulder.a, shoulder.b))
        expect(Math.abs(w.difference - w.eased)).toBeLessThan(1e-9);
    }
  });

  it('goes on both sides of a complete front', () => {
    const half = (side: string): Command[] => [
      { do: 'extend-dart', dart: `${side}/waist-dart`, to: { landmark: `${side}/bust-point` } },
      {
        do: 'draw-slash',
        slash: `up-${side}`,
        from: on(`${side}/shoulder`, 0.5),
        to: { landmark: `${side}/bust-point` },
      },
      { do: 'cut-slash', slash: `up-${side}`, past: 0 },
      { do: 'part-at-darts', darts: [`up-${side}`, `${side}/waist-dart`] },
    ];
    const [a, b] = [half('right'), half('left')];
    const work = done(
      startWork({ figure: 'F3', form: 'waist' }),
      { do: 'open-out', about: 'centre-front' },
      ...a.slice(0, 3),
      ...b.slice(0, 3),
      a[3]!,
      b[3]!,
    );
    expect(work.pieces.map((p) => p.id)).toEqual(['front-centre', 'front-side-left', 'front-side', 'back']);
    const names = work.pieces.flatMap((p) =>
      outlineOf(p)
        .filter((e) => e.role === 'style-line')
        .map((e) => e.id),
    );
    expect(names).toHaveLength(8);
    expect(new Set(names).size).toBe(8);
  });

  it('is refused where a dart is drawn short, closed or finished, or where the two do not meet', () => {
    const start = startWork({ figure: 'F2', form: 'two-dart' });
    const part = (...darts: [string, string]): Command => ({ do: 'part-at-darts', darts });
    expect(refusal(start, part('right', 'right/waist-dart'))).toBe('dart-not-working');
    const one = done(start, { do: 'extend-dart', dart: 'right', to: B() });
    expect(refusal(one, part('right', 'other'))).toBe('no-such-dart');
    const off = done(one, { do: 'extend-dart', dart: 'right/waist-dart', to: B(4, 3) });
    expect(refusal(off, part('right', 'right/waist-dart'))).toBe('darts-apart');
    const both = done(one, { do: 'extend-dart', dart: 'right/waist-dart', to: B() });
    expect(refusal(both, part('right', 'right'))).toBeDefined();
    const backed = done(both, { do: 'back-off', dart: 'right', by: 20 });
    expect(refusal(backed, part('right', 'right/waist-dart'))).toBe('dart-finished');
    expect(done(both, part('right', 'right/waist-dart')).pieces).toHaveLength(3);

    const work = princess('F2');
    const smooth = (at: string, reach: number): Command => ({
      do: 'smooth-seam',
      piece: 'front-side',
      at,
      reach,
    });
    expect(refusal(work, smooth('right/underarm', 30))).toBe('no-seam-corner');
    expect(refusal(work, smooth('nowhere', 30))).toBe('no-such-landmark');
    expect(refusal(work, smooth('right/bust-point', 400))).toBe('reach-too-long');
    expect(refusal(work, smooth('right/bust-point', 0))).toBe('bad-length');
    const smoothed = done(work, smooth('right/bust-point', 30));
    expect(refusal(smoothed, smooth('right/bust-point', 30))).toBe('no-seam-corner');
  });
});
