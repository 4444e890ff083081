import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { chainEnd, chainLength, chainStart, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import { splineThrough } from '../../src/lib/geometry/spline.ts';
import type { Point } from '../../src/lib/geometry/types.ts';
import { addConnector } from '../../src/lib/pattern/connector.ts';
import { draftBlock } from '../../src/lib/pattern/draft.ts';
import { extendDart } from '../../src/lib/pattern/extend.ts';
import { markNotch } from '../../src/lib/pattern/line-notches.ts';
import { pieceArea } from '../../src/lib/pattern/measure.ts';
import { openOut } from '../../src/lib/pattern/mirror.ts';
import type { Outcome } from '../../src/lib/pattern/outcome.ts';
import { outlineOf, seamGroups } from '../../src/lib/pattern/outline.ts';
import { separate } from '../../src/lib/pattern/separate.ts';
import { slash } from '../../src/lib/pattern/slash.ts';
import { addLine } from '../../src/lib/pattern/style-line.ts';
import { turnPart } from '../../src/lib/pattern/turn.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { PLAIN } from './bodice.ts';
import { ok } from './ok.ts';
import { real } from '../support/real.ts';

// Many runs of a property; a busy machine must not make them fail.
vi.setConfig({ testTimeout: 60_000 });

const half = draftBlock(PLAIN.measures).front;
const whole = ok(openOut(half, 'centre-front'));
const edges = whole.parts[0]!.edges;

const place = fc.oneof(
  fc.record({ x: real(-320, 320), y: real(-300, 220) }),
  fc.tuple(fc.nat(edges.length - 1), real(0, 1)).map(([i, t]): Point => {
    const { chain } = edges[i]!;
    return pointAtLength(chain, chainLength(chain) * t);
  }),
  fc.constantFrom(...Object.values(whole.parts[0]!.landmarks)),
);
const dart = fc.constantFrom('right', 'left');
const end = fc.constantFrom('start' as const, 'end' as const, undefined);

type Step = (pieces: readonly Piece[]) => readonly Piece[];

/** Applies an operation to the first piece that takes it. */
const on =
  (operation: (p: Piece) => Outcome<Piece | readonly Piece[]>): Step =>
  (pieces) => {
    for (const p of pieces) {
      const out = operation(p);
      if ('ok' in out) return pieces.flatMap((q) => (q === p ? out.ok : q));
    }
    return pieces;
  };

const step: fc.Arbitrary<Step> = fc.oneof(
  fc.array(place, { minLength: 2, maxLength: 6 }).map((points) =>
    on((p) => {
      const distinct = points.filter((q, i) => i === 0 || distance(q, points[i - 1]!) > 1e-3);
      return distinct.length < 2
        ? { refused: { code: 'none' } }
        : addLine(p, 'line', splineThrough(distinct));
    }),
  ),
  fc.tuple(dart, place).map(([d, to]) => on((p) => extendDart(p, d, to))),
  fc.tuple(dart, real(-20, 900)).map(([d, at]) => on((p) => addConnector(p, d, 'line', at))),
  real(-20, 900).map((at) => on((p) => markNotch(p, 'line', { id: 'n', at }))),
  fc
    .tuple(dart, end, fc.constantFrom(0, 0, 3))
    .map(([d, from, past]) => on((p) => slash(p, { dart: d, line: 'line', from, past }))),
  fc
    .tuple(dart, fc.constantFrom('freed', 'rest', 'front'), place, fc.option(real(-3, 3)))
    .map(([d, part, pivot, angle]) =>
      on((p) => {
        const by = angle === null ? ({ until: 'legs-meet' } as const) : { angle };
        const turned = turnPart(p, { dart: d, part, pivot, by });
        return 'ok' in turned ? { ok: turned.ok.piece } : turned;
      }),
    ),
  fc.constant(on((p) => separate(p, 'line'))),
);

const closed = (list: readonly { readonly chain: Piece['parts'][0]['edges'][0]['chain'] }[]): boolean =>
  list.every((e, i) => samePoint(chainEnd(e.chain), chainStart(list[(i + 1) % list.length]!.chain)));

const paper = (pieces: readonly Piece[]): number => pieces.reduce((sum, p) => sum + pieceArea(p), 0);

describe('whatever is drawn, cut and turned', () => {
  it('nothing throws, outlines stay closed, names stay unique', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 3, maxLength: 14 }), (steps) => {
        let pieces: readonly Piece[] = [whole];
        for (const next of steps) {
          pieces = next(pieces);
          for (const p of pieces) {
            for (const part of p.parts) expect(closed(part.edges)).toBe(true);
            expect(closed(outlineOf(p))).toBe(true);
            expect(seamGroups(p).reduce((n, g) => n + g.edges.length, 0)).toBe(outlineOf(p).length);
          }
          const ids = pieces.flatMap((p) => p.parts.flatMap((q) => q.edges.map((e) => e.id)));
          expect(new Set(ids).size).toBe(ids.length);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('a line that has no fault can be cut, and no paper is lost', () => {
    let cuts = 0;
    fc.assert(
      fc.property(fc.array(place, { minLength: 2, maxLength: 4 }), (points) => {
        const distinct = points.filter((q, i) => i === 0 || distance(q, points[i - 1]!) > 1e-3);
        fc.pre(distinct.length > 1);
        const drawn = addLine(whole, 'line', splineThrough(distinct));
        if ('refused' in drawn) return;
        const line = drawn.ok.parts[0]!.lines.find((l) => l.id === 'line')!;
        const parted = separate(drawn.ok, 'line');
        if (line.faults!.length > 0) {
          expect(parted).toMatchObject({ refused: { code: line.faults![0]!.code } });
          return;
        }
        cuts += 1;
        expect(Math.abs(paper(ok(parted)) / paper([whole]) - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 600, seed: 7 },
    );
    expect(cuts).toBeGreaterThan(10);
  });
});
