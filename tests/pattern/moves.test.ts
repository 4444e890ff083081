import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { chainEnd, chainLength, chainStart } from '../../src/lib/geometry/chain.ts';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import { isSimple } from '../../src/lib/geometry/outline.ts';
import { register } from '../../src/lib/geometry/register.ts';
import { radians } from '../../src/lib/geometry/trig.ts';
import { angleSum } from '../../src/lib/pattern/angles.ts';
import { markNotch } from '../../src/lib/pattern/line-notches.ts';
import { dartAngle, intake, pieceArea } from '../../src/lib/pattern/measure.ts';
import { chainOf, findDart, findEdge, landmark, outlineOf } from '../../src/lib/pattern/outline.ts';
import { overlay } from '../../src/lib/pattern/overlay.ts';
import { separate } from '../../src/lib/pattern/separate.ts';
import { slash } from '../../src/lib/pattern/slash.ts';
import { turnPart } from '../../src/lib/pattern/turn.ts';
import type { Edge, Piece } from '../../src/lib/pattern/types.ts';
import { PLAIN, type Ready, anyDesign, close, closedThenParted, partedThenClosed, ready } from './bodice.ts';
import { ok, refusal } from './ok.ts';

// Many runs of a property; a busy machine must not make them fail.
vi.setConfig({ testTimeout: 60_000 });

const edgesOf = (pieces: readonly Piece[]): readonly Edge[] =>
  pieces.flatMap((p) => p.parts.flatMap((part) => part.edges));

/** Runs a check over random bodies and lines; lines that cannot be cut are passed over. */
const each = (check: (r: Ready) => void, numRuns = 40): void =>
  fc.assert(
    fc.property(anyDesign, (design) => {
      const r = ready(design);
      fc.pre(r !== undefined);
      check(r!);
    }),
    { numRuns },
  );

const plain = ready(PLAIN)!;
const slashed = ok(slash(plain.front, { dart: 'right', line: 'line', from: 'start', past: 0 }));
const b1 = landmark(plain.front, 'right/bust-point')!;

describe('slashing', () => {
  it('makes two sheets that hang together in the bust point', () => {
    expect(slashed.parts.map((p) => p.id)).toEqual(['front', 'freed-right']);
    expect(slashed.hinges).toEqual([{ dart: 'right', parts: ['freed-right', 'front'], intact: true }]);
    for (const part of slashed.parts)
      expect(part.edges.some((e) => samePoint(chainStart(e.chain), b1))).toBe(true);
    expect(slashed.parts[0]!.landmarks['neck-centre']).toBeDefined();
    expect(Object.keys(slashed.parts[1]!.landmarks).sort()).toEqual([
      'right/bust-point',
      'right/dart-upper-end',
      'right/shoulder-point',
      'right/underarm',
    ]);
  });

  it('keeps what of the line is not cut on the sheet that it lies on', () => {
    const rest = slashed.parts[0]!.lines.find((l) => l.id === 'line')!;
    const foot = plain.front.parts[0]!.lines.find((l) => l.id === 'connector-right')!.foot!;
    expect(rest.origin.from).toBe(foot);
    expect(slashed.parts[1]!.lines).toEqual([]);
  });

  it('names banks left and right of someone who walks the line, and pairs them', () => {
    expect(findEdge(slashed, 'line/1/b')!.partner).toBe('line/1/a');
    expect(slashed.parts[1]!.edges.map((e) => e.id)).toContain('line/1/b');
    expect(slashed.parts[0]!.edges.map((e) => e.id)).toContain('line/1/a');
    expect(findEdge(slashed, 'connector-right/a')!.partner).toBe('connector-right/b');
  });

  it('says when it stopped short, and notes when it went through', () => {
    const wish = { dart: 'right', line: 'line', from: 'start' as const };
    const short = slash(plain.front, { ...wish, past: -3 });
    expect(short).toEqual({ refused: { code: 'slash-stops-short', detail: { dart: 'right', mm: 3 } } });
    expect(refusal(slash(plain.front, { ...wish, past: NaN }))).toBe('slash-stops-short');
    expect(ok(slash(plain.front, { ...wish, past: 4 })).hinges[0]!.intact).toBe(false);
  });

  it('refuses a dart without connector, and no end named before the line is cut', () => {
    expect(refusal(slash(plain.opened, { dart: 'right', line: 'line', from: 'start', past: 0 }))).toBe(
      'no-connector',
    );
    expect(refusal(slash(plain.front, { dart: 'right', line: 'line', past: 0 }))).toBe('not-separated');
    expect(refusal(slash(plain.front, { dart: 'right', line: 'other', from: 'start', past: 0 }))).toBe(
      'no-such-line',
    );
    expect(refusal(slash(plain.front, { dart: 'x', line: 'line', from: 'start', past: 0 }))).toBe(
      'no-such-dart',
    );
  });
});

describe('turning', () => {
  const wish = { dart: 'right', part: 'freed', pivot: b1, by: { until: 'legs-meet' as const } };

  it('closes the dart, tapes its legs, and voids the grain of what turned', () => {
    const { piece, fact } = ok(turnPart(slashed, wish));
    expect(findDart(piece, 'right')).toMatchObject({ state: 'closed', residual: 0 });
    expect(piece.parts.map((p) => p.grain)).toEqual(['kept', 'void']);
    expect(piece.parts[0]!.lines.map((l) => l.id)).toContain('taped-right');
    const outline = outlineOf(piece).map((e) => e.id);
    expect(outline).not.toContain('right/dart-upper');
    expect(outline).not.toContain('right/dart-lower');
    expect(outline).toContain('left/dart-upper');
    expect(fact).toMatchObject({ dart: 'right', part: 'freed-right', residual: 0 });
    expect(Math.abs(fact.angle)).toBeCloseTo(dartAngle(plain.front, 'right')!, 12);
    expect(fact.before).toBeCloseTo(dartAngle(plain.front, 'right')!, 12);
  });

  it('the wrong way doubles the dart', () => {
    const theta = dartAngle(plain.front, 'right')!;
    const { fact } = ok(turnPart(slashed, wish));
    const wrong = ok(turnPart(slashed, { ...wish, by: { angle: -fact.angle } }));
    expect(wrong.fact.residual).toBeCloseTo(2 * theta, 9);
    expect(findDart(wrong.piece, 'right')!.state).toBe('working');
  });

  it('by a typed angle keeps what is left open as a signed dart, both ways', () => {
    const theta = dartAngle(plain.front, 'right')!;
    const sign = Math.sign(ok(turnPart(slashed, wish)).fact.angle);
    for (const off of [-radians(1), radians(1)]) {
      const { fact, piece } = ok(turnPart(slashed, { ...wish, by: { angle: sign * (theta - off) } }));
      expect(fact.residual).toBeCloseTo(off, 9);
      expect(dartAngle(piece, 'right')).toBeCloseTo(off, 9);
      // Source: trade notes (derived): c = 2 L sin(θ/2).
      const L = chainLength(findEdge(piece, 'right/dart-upper')!.chain);
      expect(intake(piece, 'right')).toBeCloseTo(2 * L * Math.sin(radians(1) / 2), 6);
    }
  });

  it('in two steps ends where it ends in one', () => {
    const half = ok(turnPart(slashed, { ...wish, by: { angle: 0.11 } })).piece;
    const twice = ok(turnPart(half, wish)).piece;
    const once = ok(turnPart(slashed, wish)).piece;
    for (const e of once.parts[1]!.edges)
      expect(distance(chainStart(e.chain), chainStart(findEdge(twice, e.id)!.chain))).toBeLessThan(1e-9);
    expect(findDart(twice, 'right')!.state).toBe('closed');
  });

  it('opened again takes the tape off', () => {
    const closed = ok(turnPart(slashed, wish)).piece;
    const open = ok(turnPart(closed, { ...wish, by: { angle: 0.1 } })).piece;
    expect(findDart(open, 'right')!.state).toBe('working');
    expect(open.parts[0]!.lines.map((l) => l.id)).not.toContain('taped-right');
    expect(outlineOf(open).map((e) => e.id)).toContain('right/dart-upper');
  });

  it('about a wrong point does not close the dart', () => {
    const slipped = ok(turnPart(slashed, { ...wish, pivot: { x: b1.x + 6, y: b1.y } }));
    expect(findDart(slipped.piece, 'right')!.state).toBe('working');
    const joints = outlineOf(slipped.piece);
    expect(joints.map((e) => e.id)).toContain('gap/right/1');
    joints.forEach((e, i) => {
      const next = joints[(i + 1) % joints.length]!;
      expect(samePoint(chainEnd(e.chain), chainStart(next.chain))).toBe(true);
    });
  });

  it('refuses what cannot turn', () => {
    expect(refusal(turnPart(plain.front, wish))).toBe('not-slashed');
    expect(refusal(turnPart(slashed, { ...wish, dart: 'x' }))).toBe('no-such-dart');
    expect(refusal(turnPart(slashed, { ...wish, part: 'sleeve' }))).toBe('no-such-part');
    expect(refusal(turnPart(slashed, { ...wish, by: { angle: NaN } }))).toBe('angle-not-a-number');
    const end = landmark(slashed, 'right/dart-upper-end')!;
    expect(refusal(turnPart(slashed, { ...wish, pivot: end }))).toBe('pivot-on-leg');
  });
});

describe('separating', () => {
  it('gives the upper piece the neck, and works when nothing was slashed', () => {
    const [upper, lower] = ok(separate(plain.front, 'line'));
    expect([upper.id, lower.id]).toEqual(['upper', 'lower']);
    expect(landmark(upper, 'neck-centre')).toBeDefined();
    expect(landmark(lower, 'waist-centre')).toBeDefined();
    expect(upper.darts.map((d) => d.id)).toEqual(['left']);
    expect(lower.darts.map((d) => d.id)).toEqual(['right']);
    expect(upper.parts[0]!.lines.map((l) => l.id).sort()).toEqual(['centre-front', 'connector-left']);
  });

  it('puts each notch on both banks at the same place of the line', () => {
    let front = plain.front;
    for (const [id, at] of Object.entries({ n1: 90, n2: 250, n3: 330, n4: 480 }))
      front = ok(markNotch(front, 'line', { id, at }));
    for (const pieces of [closedThenParted(front), partedThenClosed(front)]) {
      for (const [id, at] of Object.entries({ n1: 90, n2: 250, n3: 330, n4: 480 })) {
        const found = pieces.flatMap((p) => p.notches.filter((n) => n.id === id));
        expect(found).toHaveLength(2);
        for (const n of found) {
          const e = edgesOf(pieces).find((x) => x.id === n.edge)!;
          const along = e.id.endsWith('/a') ? e.origin.to - n.at : e.origin.from + n.at;
          expect(along).toBeCloseTo(at, 9);
        }
      }
    }
  });
});

describe('whatever the body and the line', () => {
  it('paper is neither lost nor won: areas add up to 1e-9', () => {
    each(({ front }) => {
      const before = pieceArea(front);
      for (const pieces of [closedThenParted(front), partedThenClosed(front)]) {
        const after = pieceArea(pieces[0]) + pieceArea(pieces[1]);
        expect(Math.abs(after / before - 1)).toBeLessThan(1e-9);
      }
    });
  });

  it('every edge keeps its length to 1e-9 mm, and split edges add up to the block’s', () => {
    each(({ front, opened }) => {
      const pieces = closedThenParted(front);
      const sums = new Map<string, number>();
      for (const e of edgesOf(pieces)) {
        const length = chainLength(e.chain);
        expect(Math.abs(length - (e.origin.to - e.origin.from))).toBeLessThan(1e-9);
        if (e.role !== 'style-line' && e.role !== 'connector')
          sums.set(e.origin.edge, (sums.get(e.origin.edge) ?? 0) + length);
      }
      for (const e of opened.parts[0]!.edges) {
        if (e.role === 'dart-leg') continue;
        expect(Math.abs(sums.get(e.id)! - chainLength(e.chain))).toBeLessThan(1e-9);
      }
    });
  });

  it('the paper round each bust point keeps its angle through every move', () => {
    each(({ front }) => {
      for (const dart of ['right', 'left'] as const) {
        const bust = `${dart}/bust-point`;
        const whole = angleSum([front], bust);
        expect(Math.abs(2 * Math.PI - whole - dartAngle(front, dart)!)).toBeLessThan(1e-9);
        const one = close(front, 'right', 'start');
        expect(Math.abs(angleSum([one], bust) - whole)).toBeLessThan(1e-9);
        for (const pieces of [closedThenParted(front), partedThenClosed(front)])
          expect(Math.abs(angleSum(pieces, bust) - whole)).toBeLessThan(1e-9);
      }
    });
  });

  it('partners are alike, interval by interval', () => {
    each(({ front }) => {
      const edges = edgesOf(closedThenParted(front));
      const banks = edges.filter((e) => e.role === 'style-line' || e.role === 'connector');
      expect(banks.filter((e) => e.role === 'style-line')).toHaveLength(6);
      for (const e of banks) {
        const partner = edges.find((x) => x.id === e.partner)!;
        expect(partner.partner).toBe(e.id);
        expect(Math.abs(chainLength(e.chain) - chainLength(partner.chain))).toBeLessThan(1e-9);
      }
    });
  });

  it('closing before parting equals parting before closing, in names and to 1e-9 mm', () => {
    each(({ front }) => {
      const a = closedThenParted(front);
      const b = partedThenClosed(front);
      for (const k of [0, 1] as const) {
        const ours = outlineOf(a[k]);
        const theirs = outlineOf(b[k]);
        expect(new Set(theirs.map((e) => e.id))).toEqual(new Set(ours.map((e) => e.id)));
        expect(b[k].parts.map((p) => p.id).sort()).toEqual(a[k].parts.map((p) => p.id).sort());
        expect(b[k].notches).toEqual(a[k].notches);
        for (const e of ours) {
          const f = theirs.find((x) => x.id === e.id)!;
          expect(f.origin).toEqual(e.origin);
          expect(distance(chainStart(e.chain), chainStart(f.chain))).toBeLessThan(1e-9);
          expect(distance(chainEnd(e.chain), chainEnd(f.chain))).toBeLessThan(1e-9);
        }
      }
    });
  });

  it('turning the rest instead of the freed part gives the same shape; only the grain differs', () => {
    each(({ front }) => {
      const corners = (piece: Piece) =>
        new Map(outlineOf(piece).map((e) => [e.id, chainStart(e.chain)] as const));
      const freed = close(front, 'right', 'start', 'freed');
      const rest = close(front, 'right', 'start', 'rest');
      const a = corners(freed);
      const b = corners(rest);
      expect([...b.keys()].sort()).toEqual([...a.keys()].sort());
      const ids = [...a.keys()];
      const fit = register(
        ids.map((id) => a.get(id)!),
        ids.map((id) => b.get(id)!),
      );
      expect(fit.residual).toBeLessThan(1e-9);
      expect(fit.mirrored).toBe(false);
      expect(freed.parts.map((p) => p.grain)).toEqual(['kept', 'void']);
      expect(rest.parts.map((p) => p.grain)).toEqual(['void', 'kept']);
      // A second turn of the rest carries along what hangs on it.
      const both = close(rest, 'left', 'end', 'rest');
      expect(findDart(both, 'right')!.state).toBe('closed');
      expect(intake(both, 'right')).toBeLessThan(1e-9);
    });
  });

  // Source: trade notes (derived): a line at distance d leaves e = 2 d sin(θ/2); here measured on the cut edges.
  it('the opening in the seam is 2 d sin(θ/2) wide', () => {
    each(({ front, d }) => {
      const theta = dartAngle(front, 'right')!;
      const [upper, lower] = closedThenParted(front);
      for (const [piece, dart] of [
        [lower, 'right'],
        [upper, 'left'],
      ] as const) {
        const a = findEdge(piece, `connector-${dart}/a`)!.chain;
        const b = findEdge(piece, `connector-${dart}/b`)!.chain;
        // Bank a runs to the tip or from it; its foot is the end that is not the bust point.
        const bust = landmark(piece, `${dart}/bust-point`)!;
        const foot = (c: typeof a) => (samePoint(chainStart(c), bust) ? chainEnd(c) : chainStart(c));
        expect(distance(foot(a), foot(b))).toBeCloseTo(2 * d[dart] * Math.sin(theta / 2), 9);
      }
    });
  });

  it('outlines are closed bit for bit, and simple for a line that moves steadily away', () => {
    each(({ front }) => {
      for (const piece of closedThenParted(front)) {
        const outline = outlineOf(piece);
        outline.forEach((e, i) => {
          const next = outline[(i + 1) % outline.length]!;
          expect(samePoint(chainEnd(e.chain), chainStart(next.chain))).toBe(true);
        });
      }
    });
    for (const piece of closedThenParted(plain.front)) expect(isSimple(chainOf(outlineOf(piece)))).toBe(true);
  });

  it('every part lies on the block again to 1e-6 mm when its opening is closed', () => {
    each(({ front, opened, lines }) => {
      for (const pieces of [closedThenParted(front), partedThenClosed(front)]) {
        for (const piece of pieces) {
          for (const fit of overlay(piece, opened, lines)) {
            expect(fit.residual).toBeLessThan(1e-6);
            expect(fit.mirrored).toBe(false);
            expect(fit.missing).toEqual([]);
          }
        }
      }
    });
  });
});
