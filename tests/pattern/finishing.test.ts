import { describe, expect, it } from 'vitest';
import { isSimple } from '../../src/lib/geometry/outline.ts';
import { carryNotches, cutLine, setAllowance } from '../../src/lib/pattern/allowance.ts';
import { bridge } from '../../src/lib/pattern/bridge.ts';
import { copyPieces } from '../../src/lib/pattern/copy.ts';
import { easeIn } from '../../src/lib/pattern/ease.ts';
import { openings } from '../../src/lib/pattern/openings.ts';
import { chainOf, outlineOf, seamGroups } from '../../src/lib/pattern/outline.ts';
import { renotch } from '../../src/lib/pattern/renotch.ts';
import { seamOf, styleRun } from '../../src/lib/pattern/seam.ts';
import { takeOut } from '../../src/lib/pattern/take-out.ts';
import { trueBack } from '../../src/lib/pattern/true.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { walkSeam } from '../../src/lib/pattern/walk.ts';
import { openJoints } from './hand-made.ts';
import { lessonPieces } from './lesson-pieces.ts';
import { ok } from './ok.ts';

/** Steps 10 to 13 on pieces that the project itself drafted, cut and turned. */
describe.each(['F1', 'F2', 'F3', 'F4', 'F5'] as const)('the slanted seam on figure %s', (figure) => {
  const { upper, lower, back, block } = lessonPieces(figure);

  it('opens by 2 d sin(θ/2) at each bust point, measured on the cut edges', () => {
    for (const [piece, partner, dart] of [
      [lower, upper, 'right'],
      [upper, lower, 'left'],
    ] as const) {
      const [open] = openings(piece, partner);
      const connector = outlineOf(piece).find((e) => e.id === `connector-${dart}/a`)!;
      const d = connector.origin.to - connector.origin.from;
      // Derived; θ from the published draft (memory: Bunka, B/4 − 2.5 degrees, B in cm).
      const theta = ((block.measures.bust / 40 - 2.5) * Math.PI) / 180;
      expect(open!.width).toBeCloseTo(2 * d * Math.sin(theta / 2), 6);
      expect(open!.excess).toBeCloseTo(open!.width, 8);
    }
  });

  it('for a knit: bridged and eased, the walk shows the ease and nothing else', () => {
    const low = ok(easeIn(ok(bridge(lower, 'right', 30, 30)), 'right', 'n1', 'n2'));
    const up = ok(easeIn(ok(bridge(upper, 'left', 30, 30)), 'left', 'n3', 'n4'));
    const set: Piece[] = [up, low, back];
    for (const p of set) expect(openJoints(outlineOf(p))).toBe(0);
    for (const name of ['style-line', 'right/shoulder', 'left/shoulder', 'right/side', 'left/side']) {
      const { a, b } = seamOf(set, name)!;
      for (const s of walkSeam(a, b)) expect(s.difference - s.eased).toBeCloseTo(0, 6);
    }
  });

  it('for a woven, on a copy: taken out, trued, marked again, allowed; every seam agrees', () => {
    const [u, l, b] = copyPieces([upper, lower, back], 'woven') as [Piece, Piece, Piece];
    let low = ok(bridge(l, 'right', 30, 30));
    let up = ok(bridge(u, 'left', 30, 30));
    low = ok(takeOut(low, 'right', 'start', 'measured', up));
    up = ok(takeOut(up, 'left', 'end', 'measured', low));
    low = ok(renotch(low, 'n1', styleRun(up)));
    up = ok(renotch(up, 'n4', styleRun(low)));
    const right = ok(trueBack(b, 'right/shoulder', [up, low]));
    const left = ok(trueBack(b, 'left/side', [up, low]));
    const all = [upper, lower, back, up, low, b, right, left];
    for (const name of ['style-line', 'right/shoulder', 'left/shoulder', 'right/side', 'left/side']) {
      const seam = seamOf(all, name, 'woven')!;
      for (const s of walkSeam(seam.a, seam.b)) expect(s.difference - s.eased).toBeCloseTo(0, 6);
      for (const id of [...seam.a.pieces, ...seam.b.pieces]) expect(id).toMatch(/@woven$/);
    }
    for (const piece of [up, low, right, left]) {
      expect(openJoints(outlineOf(piece))).toBe(0);
      expect(isSimple(chainOf(outlineOf(piece)))).toBe(true);
      const wide = seamGroups(piece).reduce((p, g) => ok(setAllowance(p, g.id, 15.875)), piece);
      const made = cutLine(ok(carryNotches(wide)))!;
      expect(isSimple(made.cut)).toBe(true);
      expect(made.notches).toHaveLength(piece.id.startsWith('back') ? 0 : 4);
    }
  });
});
