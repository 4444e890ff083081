import { describe, expect, it } from 'vitest';
import { chainEnd, chainStart } from '../../src/lib/geometry/chain.ts';
import { transformChain } from '../../src/lib/geometry/chain-moved.ts';
import { IDENTITY, reflectionAcross } from '../../src/lib/geometry/isometry.ts';
import { signedArea } from '../../src/lib/geometry/outline.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import { bridge } from '../../src/lib/pattern/bridge.ts';
import { pieceArea } from '../../src/lib/pattern/measure.ts';
import { movePart } from '../../src/lib/pattern/move.ts';
import { overlay } from '../../src/lib/pattern/overlay.ts';
import { slivers } from '../../src/lib/pattern/slivers.ts';
import { takeOut } from '../../src/lib/pattern/take-out.ts';
import type { Part, Piece } from '../../src/lib/pattern/types.ts';
import { findEdge, landmark } from '../../src/lib/pattern/outline.ts';
import { smoothSeam } from '../../src/lib/pattern/smooth-seam.ts';
import { FINISH_TABLES } from '../machines/finish-tables.ts';
import { PLAIN, closedThenParted, ready } from './bodice.ts';
import { ok } from './ok.ts';

const { front, opened, lines } = ready(PLAIN)!;
const [upper, lower] = closedThenParted(front);

const withPart = (piece: Piece, change: (p: Part) => Part): Piece => ({
  ...piece,
  parts: piece.parts.map((p, i) => (i === 0 ? change(p) : p)),
});

describe('closing and overlaying', () => {
  it('finds a corner that was traced 2 mm off', () => {
    const wrong = withPart(lower, (part) => ({
      ...part,
      edges: part.edges.map((e) => {
        if (e.id !== 'left/waist') return e;
        const s = e.chain[0]!;
        return { ...e, chain: [{ ...s, d: { x: s.d.x, y: s.d.y + 2 } }] };
      }),
    }));
    const [fit] = overlay(wrong, opened, lines);
    expect(fit!.worst).toBe('left/waist');
    expect(fit!.residual).toBeGreaterThan(1);
    expect(fit!.residual).toBeLessThan(2.1);
  });

  it('does not follow the recorded motion: a part that was moved without a record still fits', () => {
    const moved = withPart(upper, (p) => ({
      ...movePart(p, { a: 0.6, b: 0.8, c: -0.8, d: 0.6, e: 40, f: -7 }, []),
      motion: IDENTITY,
    }));
    expect(overlay(moved, opened, lines)[0]!.residual).toBeLessThan(1e-9);
  });

  it('finds a mirrored part', () => {
    const m = reflectionAcross({ x: 0, y: 0 }, { x: 0, y: 1 });
    const turnedOver = withPart(upper, (p) => ({
      ...p,
      edges: p.edges.map((e) => ({ ...e, chain: transformChain(e.chain, m) })),
    }));
    const [fit] = overlay(turnedOver, opened, lines);
    expect(fit!.mirrored).toBe(true);
    expect(fit!.residual).toBeGreaterThan(10);
  });

  it('lists edges without counterpart', () => {
    expect(overlay(upper, opened)[0]!.missing).toEqual(
      expect.arrayContaining(['line/1/a', 'line/2/a', 'connector-left/b']),
    );
  });
});

describe('a front that was parted along a princess line', () => {
  const whole = FINISH_TABLES['part-at-darts']!;
  const parted = FINISH_TABLES['smooth-seam']!;
  const fronts = parted.pieces.filter(({ id }) => id.startsWith('front'));

  it('lies on the block edge on edge: its banks where the legs of both darts were', () => {
    expect(fronts.map(({ id }) => id)).toEqual(['front-centre', 'front-side']);
    for (const piece of fronts)
      for (const fit of overlay(piece, parted.opened!, parted.lines)) {
        expect(fit.missing, fit.part).toEqual([]);
        expect(fit.residual, fit.part).toBeLessThan(1e-6);
      }
    const before = overlay(whole.pieces[0]!, whole.opened!, whole.lines);
    expect(before.every(({ missing, residual }) => missing.length === 0 && residual < 1e-6)).toBe(true);
  });

  it('is found out where a bank was cut 2 mm off', () => {
    const [centre] = fronts;
    const off = withPart(centre!, (part) => ({
      ...part,
      edges: part.edges.map((e) => {
        if (e.id !== 'princess/1/a') return e;
        const s = e.chain[0]!;
        return { ...e, chain: [{ ...s, a: { x: s.a.x + 2, y: s.a.y } }, ...e.chain.slice(1)] };
      }),
    }));
    const [fit] = overlay(off, parted.opened!, parted.lines);
    expect(fit!.worst).toBe('princess/1/a');
    expect(fit!.residual).toBeGreaterThan(1);
  });

  it('still does once the seam is smoothed, but for the seam that was drawn anew', () => {
    for (const piece of fronts) {
      const smooth = ok(smoothSeam(piece, 'right/bust-point', 30));
      for (const fit of overlay(smooth, parted.opened!, parted.lines)) {
        expect(fit.missing).toEqual([]);
        expect(fit.residual).toBeLessThan(1e-6);
      }
    }
  });
});

describe('slivers of a treatment', () => {
  const bridged = ok(bridge(lower, 'right', 25, 25));
  const trimmed = ok(takeOut(bridged, 'right', 'start', 'measured', upper));

  it('there are none before', () => {
    expect(slivers(lower)).toEqual([]);
  });

  it('a bridge: the area that the piece gained, with the mouth of the opening', () => {
    const [only, ...more] = slivers(bridged);
    expect(more).toEqual([]);
    expect(only!.edge).toBe('bridge-right');
    const bust = landmark(lower, 'right/bust-point')!;
    const foot = (id: string) => {
      const { chain } = findEdge(lower, id)!;
      const [s, e] = [chainStart(chain), chainEnd(chain)];
      return distance(s, bust) < 1e-9 ? e : s;
    };
    const a = foot('connector-right/a');
    const b = foot('connector-right/b');
    const mouth = Math.abs((a.x - bust.x) * (b.y - bust.y) - (a.y - bust.y) * (b.x - bust.x)) / 2;
    expect(pieceArea(bridged) - pieceArea(lower)).toBeCloseTo(only!.area + mouth, 6);
    expect(only!.width).toBeGreaterThan(0);
    expect(only!.width).toBeLessThan(10);
  });

  it('taking out: the sliver at the shoulder accounts for the rest of the change in area', () => {
    const found = slivers(trimmed);
    expect(found.map((s) => s.edge).sort()).toEqual(['bridge-right', 'right/shoulder.1']);
    const cutOff = found.find((s) => s.edge === 'right/shoulder.1')!;
    expect(cutOff.area).toBeLessThan(0);
    expect(pieceArea(trimmed) - pieceArea(bridged)).toBeCloseTo(cutOff.area, 6);
    expect(signedArea(cutOff.chain)).toBe(cutOff.area);
    // Nowhere wider than what was taken out along the seam.
    const taken = trimmed.treatments[0]!.excess;
    expect(cutOff.width).toBeLessThan(taken + 1e-6);
  });

  it('all other edges still lie on the block', () => {
    for (const fit of overlay(trimmed, opened, lines)) expect(fit.residual).toBeLessThan(1e-6);
  });
});
