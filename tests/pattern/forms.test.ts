import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { chainEnd, chainLength, chainStart } from '../../src/lib/geometry/chain.ts';
import { isSimple, signedArea } from '../../src/lib/geometry/outline.ts';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import type { Point } from '../../src/lib/geometry/types.ts';
import { angleSum } from '../../src/lib/pattern/angles.ts';
import { draftBlock } from '../../src/lib/pattern/draft.ts';
import { extendDart, withTip } from '../../src/lib/pattern/extend.ts';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import { SIDE_SHARE } from '../../src/lib/pattern/forms.ts';
import { dartAngle, drawnAngle, intake, legLength } from '../../src/lib/pattern/measure.ts';
import { openOut } from '../../src/lib/pattern/mirror.ts';
import { chainOf, landmark, outlineOf } from '../../src/lib/pattern/outline.ts';
import type { EdgeRole, Part, Piece } from '../../src/lib/pattern/types.ts';
import type { BlockForm, Measures } from '../../src/lib/pattern/block.ts';
import { anyMeasures } from './bodice.ts';
import { ok, refusal } from './ok.ts';

// Many runs of a property; a busy machine must not make them fail.
vi.setConfig({ testTimeout: 120_000 });

const FORMS: readonly BlockForm[] = ['side', 'two-dart', 'waist'];
const OTHER = ['two-dart', 'waist'] as const;
const DARTS: Readonly<Record<BlockForm, readonly string[]>> = {
  side: ['right'],
  'two-dart': ['right', 'right/waist-dart'],
  waist: ['right/waist-dart'],
};
const SEWN = { right: 'right/sewn-point', 'right/waist-dart': 'right/waist-sewn-point' } as const;

/** All figures, and 200 bodies drawn at random. */
function each(check: (m: Measures) => void): void {
  Object.values(FIGURES).forEach(check);
  fc.assert(fc.property(anyMeasures, check), { numRuns: 200 });
}

/** Seam lengths of a piece by role, darts left out. */
function seams(piece: Piece): Readonly<Record<string, number>> {
  const out: Partial<Record<EdgeRole, number>> = {};
  for (const e of outlineOf(piece))
    if (e.role !== 'dart-leg') out[e.role] = (out[e.role] ?? 0) + chainLength(e.chain);
  return out;
}

/** The sheet with the legs of every dart drawn to the bust point. */
function toBust(piece: Piece): Part {
  const bust = landmark(piece, 'right/bust-point')!;
  return piece.darts.reduce((part, dart) => withTip(part, dart, bust), piece.parts[0]!);
}

/** The paper's angle round the bust point by the law of cosines over the gaps, which reads lengths only. */
function paperAngle(piece: Piece): number {
  const bust = landmark(piece, 'right/bust-point')!;
  const gaps = piece.darts.map(({ upper, lower }) => {
    const edges = piece.parts[0]!.edges;
    const outer = (id: string): Point => {
      const { chain } = edges.find((e) => e.id === id)!;
      const [a, b] = [chainStart(chain), chainEnd(chain)];
      return distance(a, bust) > distance(b, bust) ? a : b;
    };
    const [p, q] = [outer(upper), outer(lower)];
    const [a, b, c] = [distance(p, bust), distance(q, bust), distance(p, q)];
    return Math.acos((a * a + b * b - c * c) / (2 * a * b));
  });
  return 2 * Math.PI - gaps.reduce((sum, g) => sum + g, 0);
}

describe('the forms of the block', () => {
  it('leave the side form as it was when no form is named', () => {
    each((m) => {
      expect(draftBlock(m, 'side')).toEqual(draftBlock(m));
    });
  });

  // Source: trade notes, dart theory (read: Erwin p. 31, NIMI p. 195): the fit is kept wherever the dart lies.
  it('keep the length of each seam, the paper round the bust point and the area', () => {
    each((m) => {
      const side = draftBlock(m).front;
      for (const form of OTHER) {
        const { front } = draftBlock(m, form);
        const [was, is] = [seams(side), seams(front)];
        expect(Object.keys(is).sort()).toEqual(Object.keys(was).sort());
        for (const role of Object.keys(was)) expect(Math.abs(is[role]! - was[role]!)).toBeLessThan(1e-9);
        expect(Math.abs(paperAngle(front) - paperAngle(side))).toBeLessThan(1e-9);
        const area = (piece: Piece) => signedArea(chainOf(toBust(piece).edges));
        expect(Math.abs(area(front) - area(side))).toBeLessThan(1e-6);
      }
    });
  });

  // Source: trade notes (derived): split darts, angles add.
  it('share the angle of the side dart out, and say it in total', () => {
    each((m) => {
      const theta = draftBlock(m).facts.dartAngle;
      for (const form of FORMS) {
        const { front, facts } = draftBlock(m, form);
        expect(front.darts.map((d) => d.id)).toEqual(DARTS[form]);
        const angles = front.darts.map((d) => dartAngle(front, d.id)!);
        front.darts.forEach((d, i) => expect(d.residual).toBe(angles[i]));
        expect(Math.abs(angles.reduce((s, a) => s + a, 0) - theta)).toBeLessThan(1e-9);
        expect(facts.dartAngle).toBe(theta);
        if (form === 'two-dart') expect(Math.abs(angles[0]! - SIDE_SHARE * theta)).toBeLessThan(1e-9);
      }
    });
  });

  // Source: trade notes (derived): intake 2 L sin(θ/2), legs to the bust point.
  it('give the waist dart the intake of its leg and angle, straight below the bust point', () => {
    each((m) => {
      for (const form of OTHER) {
        const { front } = draftBlock(m, form);
        const angle = dartAngle(front, 'right/waist-dart')!;
        const leg = legLength(front, 'right/waist-dart')!;
        expect(Math.abs(intake(front, 'right/waist-dart')! - 2 * leg * Math.sin(angle / 2))).toBeLessThan(
          1e-9,
        );
        const bust = landmark(front, 'right/bust-point')!;
        const below = landmark(front, 'right/waist-dart-centre-end')!;
        expect(below.x).toBe(bust.x);
        expect(distance(landmark(front, 'right/waist-dart-side-end')!, bust)).toBeCloseTo(leg, 9);
      }
    });
  });

  // Source: trade notes (memory: Joseph-Armstrong): waist darts stop 1/2 to 3/4 in short of the bust point, side darts 1 in.
  it('sew the darts to a point on their middle, backed off as far as is usual', () => {
    each((m) => {
      for (const form of FORMS) {
        const { front, facts } = draftBlock(m, form);
        const bust = landmark(front, 'right/bust-point')!;
        for (const { id, state, upper, lower } of front.darts) {
          expect(state).toBe('sewn');
          const sewn = landmark(front, SEWN[id as keyof typeof SEWN])!;
          const off = distance(sewn, bust);
          if (id === 'right') expect(off).toBeCloseTo(25.4, 9);
          else {
            expect(off).toBeGreaterThanOrEqual(12.7);
            expect(off).toBeLessThanOrEqual(19.05);
          }
          if (form !== 'two-dart') expect(off).toBeCloseTo(facts.backOff, 9);
          const edges = front.parts[0]!.edges;
          const [a, b] = [upper, lower].map((leg) => chainLength(edges.find((e) => e.id === leg)!.chain));
          expect(a).toBeCloseTo(b!, 9);
          expect(drawnAngle(front, id)!).toBeGreaterThan(dartAngle(front, id)!);
        }
      }
    });
  });

  it('are one simple sheet, its edges joined bit for bit, named as they are walked', () => {
    each((m) => {
      for (const form of FORMS) {
        const { front, back } = draftBlock(m, form);
        const { edges } = front.parts[0]!;
        edges.forEach((e, i) =>
          expect(samePoint(chainEnd(e.chain), chainStart(edges[(i + 1) % edges.length]!.chain))).toBe(true),
        );
        expect(isSimple(chainOf(edges))).toBe(true);
        const waist =
          form === 'side'
            ? ['right/waist']
            : ['right/waist-inner', 'right/waist-dart-centre', 'right/waist-dart-side', 'right/waist-outer'];
        const side =
          form === 'waist'
            ? ['right/side']
            : ['right/side-lower', 'right/dart-lower', 'right/dart-upper', 'right/side-upper'];
        const rest = ['right/armhole', 'right/shoulder', 'right/neckline'];
        expect(edges.map((e) => e.id)).toEqual(['centre-front', ...waist, ...side, ...rest]);
        const backSide = back.parts[0]!.edges.find((e) => e.id === 'back/side')!;
        expect(edges.some((e) => e.id === backSide.partner)).toBe(true);
        for (const [id, p] of Object.entries(front.parts[0]!.landmarks))
          expect(Number.isFinite(p.x + p.y), id).toBe(true);
      }
    });
  });

  // Source: trade notes (derived): angles add; the paper round the bust point is a full turn less the angle of all darts.
  it('take both darts drawn to the one bust point, in either order', () => {
    each((m) => {
      for (const form of FORMS) {
        const { front, facts } = draftBlock(m, form);
        const bust = landmark(front, 'right/bust-point')!;
        for (const ids of [DARTS[form], [...DARTS[form]].reverse()]) {
          let now = front;
          for (const id of ids) now = ok(extendDart(now, id, bust));
          expect(now.darts.every((d) => d.state === 'working')).toBe(true);
          expect(
            Math.abs(angleSum([now], 'right/bust-point') - (2 * Math.PI - facts.dartAngle)),
          ).toBeLessThan(1e-9);
          expect(toBust(front).edges).toEqual(now.parts[0]!.edges);
        }
      }
    });
  });

  it('refuse a dart drawn across another one', () => {
    const { front } = draftBlock(FIGURES.F3, 'two-dart');
    const bust = landmark(front, 'right/bust-point')!;
    const worked = ok(extendDart(front, 'right/waist-dart', bust));
    const beyond = { x: bust.x, y: bust.y + 60 };
    expect(refusal(extendDart(worked, 'right', beyond))).toBe('dart-leaves-piece');
  });

  it('open out to a front with the mirror image of each dart', () => {
    for (const form of OTHER) {
      const { front } = draftBlock(FIGURES.F3, form);
      const whole = ok(openOut(front, 'centre-front'));
      for (const id of DARTS[form]) {
        const left = id.replace('right', 'left');
        expect(dartAngle(whole, left)).toBeCloseTo(dartAngle(whole, id)!, 12);
        expect(legLength(whole, left)).toBeCloseTo(legLength(whole, id)!, 9);
      }
      expect(isSimple(chainOf(outlineOf(whole)))).toBe(true);
    }
  });
});
