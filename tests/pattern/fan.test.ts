import { describe, expect, it } from 'vitest';
import { chainEnd, chainLength, chainStart, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import { angleSum } from '../../src/lib/pattern/angles.ts';
import { cutSlash } from '../../src/lib/pattern/cut-slash.ts';
import { draftBlock } from '../../src/lib/pattern/draft.ts';
import { extendDart } from '../../src/lib/pattern/extend.ts';
import { fallApart } from '../../src/lib/pattern/fall-apart.ts';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import { dartAngle, intake, pieceArea } from '../../src/lib/pattern/measure.ts';
import { findDart, findEdge, landmark, legIds, outlineOf, partOf } from '../../src/lib/pattern/outline.ts';
import { drawSlash } from '../../src/lib/pattern/slash-line.ts';
import { turnInto } from '../../src/lib/pattern/turn-into.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { ok } from './ok.ts';

// How sheets are named and joined are the project's own rules; that turns about the bust point lose nothing is derived (trade notes).
const BUST = 'right/bust-point';
const DARTS = ['right', 'right/waist-dart'];
const block = draftBlock(FIGURES.F2, 'two-dart').front;
const bust = landmark(block, BUST)!;
const both = DARTS.reduce((piece, dart) => ok(extendDart(piece, dart, bust)), block);
function slashed(piece: Piece, id: string, edge: string, at: number): Piece {
  const { chain } = findEdge(piece, edge)!;
  const from = pointAtLength(chain, at * chainLength(chain));
  return ok(cutSlash(ok(drawSlash(piece, id, { from, to: bust }, edge)), id, 0));
}
const turned = (piece: Piece, dart: string, into: string, share = 1): Piece =>
  ok(turnInto(piece, { dart, into, part: 'freed', pivot: bust, by: { share } })).piece;

const ids = (piece: Piece): string[] => outlineOf(piece).map((e) => e.id);
/** The outline's ids from centre front on. */
function fromCentre(piece: Piece): string[] {
  const all = ids(piece);
  const i = all.indexOf('centre-front');
  return [...all.slice(i), ...all.slice(0, i)];
}

describe('two darts drawn to one point', () => {
  it('leave one sheet until something is cut or turned, and then two that hang in the point', () => {
    expect(both.parts).toHaveLength(1);
    const apart = fallApart(both);
    expect(apart.parts.map((p) => p.id)).toEqual(['front', 'freed-right/waist-dart']);
    expect(apart.hinges).toEqual([
      { dart: 'right/waist-dart', parts: ['freed-right/waist-dart', 'front'], intact: true },
    ]);
    expect(apart.parts.every((p) => samePoint(p.landmarks[BUST]!, bust))).toBe(true);
    expect(fallApart(apart)).toBe(apart);
    expect(pieceArea(apart)).toBeCloseTo(pieceArea(both), 8);
    expect(angleSum([apart], BUST)).toBeCloseTo(angleSum([both], BUST), 12);
    expect(fromCentre(apart)).toEqual(fromCentre(both));
  });

  it('do not take a piece apart that touches itself nowhere', () => {
    expect(fallApart(block)).toBe(block);
    const one = ok(extendDart(block, 'right', bust));
    expect(fallApart(one)).toBe(one);
  });
});

describe('the outline of a fan of sheets', () => {
  const fan = slashed(slashed(both, 'a', 'right/shoulder', 0.5), 'b', 'right/armhole', 0.5);
  const OPEN = [
    ...['centre-front', 'right/waist-inner', 'right/waist-dart-centre', 'right/waist-dart-side'],
    ...['right/waist-outer', 'right/side-lower', 'right/dart-lower', 'right/dart-upper', 'right/side-upper'],
    ...['right/armhole.1', 'b/b', 'b/a', 'right/armhole.2', 'right/shoulder.1', 'a/b', 'a/a'],
    ...['right/shoulder.2', 'right/neckline'],
  ];
  const without = (...darts: string[]): string[] => {
    const legs = darts.flatMap((d) => legIds(findDart(fan, d)!));
    return OPEN.filter((id) => !legs.includes(id));
  };

  it('goes into the bust point and out again at every open dart', () => {
    expect(fan.parts).toHaveLength(4);
    expect(fan.hinges).toHaveLength(3);
    expect(fromCentre(fan)).toEqual(OPEN);
    const outline = outlineOf(fan);
    for (const [i, e] of outline.entries())
      if (samePoint(chainEnd(e.chain), bust)) {
        const next = outline[(i + 1) % outline.length]!;
        expect(samePoint(chainStart(next.chain), bust)).toBe(true);
        expect(next.dart).toBe(e.dart);
      }
  });

  it('leaves the taped legs of closed darts out, whichever they are and in whatever order they were closed', () => {
    const waistClosed = turned(fan, 'right/waist-dart', 'a');
    const sideClosed = turned(fan, 'right', 'b');
    expect(fromCentre(waistClosed)).toEqual(without('right/waist-dart'));
    expect(fromCentre(sideClosed)).toEqual(without('right'));
    const one = turned(waistClosed, 'right', 'b');
    const other = turned(sideClosed, 'right/waist-dart', 'a');
    for (const piece of [one, other]) expect(fromCentre(piece)).toEqual(without('right', 'right/waist-dart'));
    // All but one closed: what is left over of the ring is open.
    const last = turned(one, 'b', 'a');
    expect(fromCentre(last)).toEqual(without('right', 'right/waist-dart', 'b'));
    expect(dartAngle(last, 'a')).toBeCloseTo(
      dartAngle(both, 'right')! + dartAngle(both, 'right/waist-dart')!,
      9,
    );
    for (const piece of [waistClosed, sideClosed, one, other, last]) {
      const outline = outlineOf(piece);
      outline.forEach((e, i) =>
        expect(samePoint(chainEnd(e.chain), chainStart(outline[(i + 1) % outline.length]!.chain))).toBe(true),
      );
      expect(angleSum([piece], BUST)).toBeCloseTo(angleSum([both], BUST), 9);
      expect(pieceArea(piece)).toBeCloseTo(pieceArea(both), 6);
    }
  });

  it('takes along whatever hangs on the sheets that turn, open or taped', () => {
    const one = turned(fan, 'right/waist-dart', 'a');
    // From the waist to the shoulder everything but the centre turned: the side dart and slash b stay as they were.
    for (const dart of ['right', 'b']) expect(intake(one, dart)).toBeCloseTo(intake(fan, dart)!, 9);
    const grains = new Map(one.parts.map((p) => [p.id, p.grain]));
    expect([...grains.values()].filter((g) => g === 'kept')).toHaveLength(1);
    expect(partOf(one, 'centre-front')!.grain).toBe('kept');
    const back = turned(one, 'a', 'right/waist-dart');
    for (const e of outlineOf(fan)) {
      if (e.dart === 'a') continue;
      const f = outlineOf(back).find((x) => x.id === e.id)!;
      expect(distance(chainStart(e.chain), chainStart(f.chain))).toBeLessThan(1e-9);
    }
  });
});
