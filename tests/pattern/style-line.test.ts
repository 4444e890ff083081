import { describe, expect, it } from 'vitest';
import { chainEnd, chainLength, chainStart, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import { line } from '../../src/lib/geometry/segment.ts';
import { splineThrough } from '../../src/lib/geometry/spline.ts';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { addConnector } from '../../src/lib/pattern/connector.ts';
import { draftBlock } from '../../src/lib/pattern/draft.ts';
import { extendDart } from '../../src/lib/pattern/extend.ts';
import { markNotch, removeNotch } from '../../src/lib/pattern/line-notches.ts';
import { openOut } from '../../src/lib/pattern/mirror.ts';
import { findEdge, landmark } from '../../src/lib/pattern/outline.ts';
import { separate } from '../../src/lib/pattern/separate.ts';
import { slash } from '../../src/lib/pattern/slash.ts';
import { addLine, findLine } from '../../src/lib/pattern/style-line.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { PLAIN, ready, styled } from './bodice.ts';
import { ok, refusal } from './ok.ts';

const front = ok(openOut(draftBlock(PLAIN.measures).front, 'centre-front'));
const on = (id: string, part: number): Point => {
  const { chain } = findEdge(front, id)!;
  return pointAtLength(chain, chainLength(chain) * part);
};
const faults = (chain: Chain): readonly string[] =>
  findLine(ok(addLine(front, 'line', chain)), 'line')!.line.faults!.map((f) => f.code);

const start = on('right/shoulder', 0.5);
const end = on('left/side-lower', 0.5);

describe('drawing a line', () => {
  it('has no fault when it runs inside from edge to edge, and ends on the edges bit for bit', () => {
    const { front: drawn } = styled(PLAIN);
    const { line: style } = findLine(drawn, 'line')!;
    expect(style.faults).toEqual([]);
    const shoulder = findEdge(front, 'right/shoulder')!.chain[0]!;
    const gap = distance(chainStart(style.chain), shoulder.a) + distance(chainStart(style.chain), shoulder.d);
    expect(gap).toBeCloseTo(chainLength([shoulder]), 9);
  });

  it('refuses what has no length or is no number', () => {
    expect(refusal(addLine(front, 'line', []))).toBe('line-without-length');
    expect(refusal(addLine(front, 'line', [line(start, start)]))).toBe('line-without-length');
    expect(refusal(addLine(front, 'line', [line(start, { x: NaN, y: 0 })]))).toBe('line-without-length');
  });

  it('notes a line that stops short, and by how much', () => {
    const short = { x: end.x - 7, y: end.y };
    const drawn = ok(addLine(front, 'line', splineThrough([start, { x: 0, y: 60 }, short])));
    const [fault] = findLine(drawn, 'line')!.line.faults!;
    expect(fault).toMatchObject({ code: 'line-stops-short', end: 'end' });
    expect(fault!.mm).toBeCloseTo(7, 9);
  });

  it('notes a line that leaves the piece: across the neck, past the side, along an edge', () => {
    expect(faults([line(on('right/neckline', 0.2), on('left/neckline', 0.8))])).toEqual([
      'line-leaves-piece',
    ]);
    expect(faults([line(start, { x: end.x + 30, y: end.y })])).toContain('line-leaves-piece');
    expect(faults([line(on('right/waist', 0.2), on('right/waist', 0.7))])).toContain('line-leaves-piece');
  });

  it('notes a line that crosses itself', () => {
    const loop = splineThrough([start, { x: 60, y: 90 }, { x: -60, y: 90 }, { x: 40, y: -60 }, end]);
    expect(faults(loop)).toContain('line-crosses-itself');
  });

  it('of a scribble that crosses itself thousands of times notes a few', () => {
    const b = landmark(front, 'right/bust-point')!;
    const points = Array.from({ length: 198 }, (_, k) => ({
      x: b.x + ((k * 37) % 41) - 20,
      y: b.y + ((k * 53) % 97) - 60,
    }));
    const noted = faults(splineThrough([start, ...points, end]));
    expect(noted).toContain('line-crosses-itself');
    expect(noted.length).toBeLessThan(60);
  });

  it('notes a line that meets a dart: across its legs, or ending on one', () => {
    const through = [line(start, on('right/waist', 0.9))];
    expect(faults(through)).toContain('line-meets-dart');
    expect(faults([line(start, on('right/dart-upper', 0.5))])).toEqual(['line-meets-dart']);
  });

  it('cannot be cut while it has a fault, and says which', () => {
    const short = ok(
      addLine(front, 'line', splineThrough([start, { x: 0, y: 60 }, { x: end.x - 7, y: end.y }])),
    );
    expect(refusal(separate(short, 'line'))).toBe('line-stops-short');
    expect(refusal(separate(front, 'line'))).toBe('no-such-line');
    const b2 = landmark(front, 'left/bust-point')!;
    const connected = ok(addConnector(ok(extendDart(short, 'left', b2)), 'left', 'line', 330));
    expect(refusal(slash(connected, { dart: 'left', line: 'line', from: 'end', past: 0 }))).toBe(
      'line-stops-short',
    );
  });

  it('drawn again takes the place of the old one with its connectors', () => {
    const { front: whole } = ready(PLAIN)!;
    const again = ok(addLine(whole, 'line', [line(start, on('left/waist', 0.2))]));
    expect(again.parts[0]!.lines.map((l) => l.id)).toEqual(['centre-front', 'line']);
  });
});

describe('notches on a line', () => {
  const { front: drawn } = styled(PLAIN);
  it('are marked, moved, removed', () => {
    const one = ok(markNotch(drawn, 'line', { id: 'n1', at: 120 }));
    const two = ok(markNotch(one, 'line', { id: 'n0', at: 80 }));
    const moved = ok(markNotch(two, 'line', { id: 'n1', at: 60 }));
    expect(findLine(moved, 'line')!.line.notches).toEqual([
      { id: 'n1', at: 60 },
      { id: 'n0', at: 80 },
    ]);
    expect(findLine(ok(removeNotch(moved, 'n1')), 'line')!.line.notches).toEqual([{ id: 'n0', at: 80 }]);
  });
  it('are refused off the line, without a line, after the cut', () => {
    expect(refusal(markNotch(drawn, 'line', { id: 'n1', at: 5000 }))).toBe('notch-off-line');
    expect(refusal(markNotch(drawn, 'other', { id: 'n1', at: 50 }))).toBe('no-such-line');
    expect(refusal(removeNotch(drawn, 'n9'))).toBe('no-such-notch');
    const [upper] = ok(separate(drawn, 'line'));
    expect(refusal(markNotch(upper, 'line', { id: 'n1', at: 50 }))).toBe('line-already-cut');
  });
});

describe('extending a dart and connecting it', () => {
  const { front: drawn } = styled(PLAIN);
  const b1 = landmark(drawn, 'right/bust-point')!;
  const extended = ok(extendDart(drawn, 'right', b1));

  it('takes both legs to the very point', () => {
    for (const id of ['right/dart-upper', 'right/dart-lower']) {
      const { chain } = findEdge(extended, id)!;
      expect([chainStart(chain), chainEnd(chain)].some((p) => samePoint(p, b1))).toBe(true);
    }
  });

  it('refuses a leg that would cross the outline or a drawn line, and an unknown dart', () => {
    expect(refusal(extendDart(drawn, 'right', { x: 400, y: 0 }))).toMatch(/dart-(leaves-piece|meets-line)/);
    expect(refusal(extendDart(front, 'right', { x: 0, y: 400 }))).toBe('dart-leaves-piece');
    expect(refusal(extendDart(drawn, 'right', { x: 0, y: 0 }))).toBe('dart-meets-line');
    expect(refusal(extendDart(drawn, 'middle', b1))).toBe('no-such-dart');
  });

  it('gives the line a joint in the connector’s foot', () => {
    const connected = ok(addConnector(extended, 'right', 'line', 200));
    const foot = findLine(connected, 'connector-right')!.line.chain[0]!.d;
    const style = findLine(connected, 'line')!.line;
    expect(style.chain.some((s) => samePoint(s.a, foot))).toBe(true);
    expect(chainLength(style.chain)).toBeCloseTo(chainLength(findLine(extended, 'line')!.line.chain), 9);
  });

  it('refuses a connector without line or dart, across the line, or off it', () => {
    expect(refusal(addConnector(extended, 'right', 'other', 200))).toBe('no-such-line');
    expect(refusal(addConnector(extended, 'middle', 'line', 200))).toBe('no-such-dart');
    expect(refusal(addConnector(extended, 'right', 'line', -5))).toBe('no-such-line');
    expect(refusal(addConnector(extended, 'right', 'line', Infinity))).toBe('no-such-line');
  });
});

describe('a piece that was cut', () => {
  it('takes no line of that name, no connector and no extension any more', () => {
    const { front: whole } = ready(PLAIN)!;
    const cut = ok(slash(whole, { dart: 'right', line: 'line', from: 'start', past: 0 }));
    expect(refusal(addLine(cut, 'line', [line(start, end)]))).toBe('line-already-cut');
    expect(refusal(addConnector(cut, 'right', 'line', 200))).toBe('dart-already-cut');
    expect(refusal(extendDart(cut, 'right', { x: 0, y: 0 }))).toBe('dart-already-cut');
    const again: Piece = cut;
    expect(refusal(slash(again, { dart: 'right', line: 'line', from: 'start', past: 0 }))).toBe(
      'already-slashed',
    );
  });
});
