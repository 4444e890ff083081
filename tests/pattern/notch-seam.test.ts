import { describe, expect, it } from 'vitest';
import { chainLength, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { subchain } from '../../src/lib/geometry/subchain.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { edgeLength } from '../../src/lib/pattern/edge-length.ts';
import { notchSeam, offOf, partedSeam, placeOff, seamEnds } from '../../src/lib/pattern/notch-seam.ts';
import { smoothSeam } from '../../src/lib/pattern/smooth-seam.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { FINISH_TABLES } from '../machines/finish-tables.ts';

const BUST = 'right/bust-point';
const { pieces } = FINISH_TABLES['notch-seam']!;
const seamOf = (list: readonly Piece[], id: string) =>
  partedSeam(
    list.find((p) => p.id === id)!,
    'princess',
  )!;

// Common practice: notches of two edges that are sewn together stand at the same distance from where both meet.
describe('notches of a parted seam', () => {
  it.each([0, 12.7, 45, -30, -80])(
    'stand %s mm from the bust point on both edges, measured along them',
    (off) => {
      const marked = notchSeam(pieces, 'princess', 'n1', off);
      if ('refused' in marked) throw new Error(marked.refused.code);
      const measured = ['front-centre', 'front-side'].map((id) => {
        const piece = marked.ok.find((p) => p.id === id)!;
        const notch = piece.notches.find((m) => m.id === 'n1')!;
        const seam = seamOf(marked.ok, id);
        const edge = off < 0 ? seam.second : seam.first;
        expect(notch.edge).toBe(edge.id);
        expect(offOf(seam, notch)).toBeCloseTo(off, 9);
        // The cut edge between the notch and the bust point, measured on its own chain.
        const joint = nearestOnChain(edge.chain, piece.parts[0]!.landmarks[BUST] ?? seam.joint).length;
        const [from, to] = [Math.min(joint, notch.at), Math.max(joint, notch.at)];
        const length = to - from < 1e-9 ? 0 : chainLength(subchain(edge.chain, from, to));
        expect(length).toBeCloseTo(Math.abs(off), 6);
        expect(placeOff(seam, off)!.point).toEqual(pointAtLength(edge.chain, notch.at));
        return length;
      });
      expect(measured[0]).toBeCloseTo(measured[1]!, 6);
    },
  );

  it('are moved, not doubled, when marked again', () => {
    const once = notchSeam(pieces, 'princess', 'n1', 40);
    if ('refused' in once) throw new Error(once.refused.code);
    const again = notchSeam(once.ok, 'princess', 'n1', -40);
    if ('refused' in again) throw new Error(again.refused.code);
    for (const piece of again.ok.filter((p) => p.id !== 'back')) expect(piece.notches).toHaveLength(1);
  });

  it('are refused beyond the ends of the seam, and where nothing was parted', () => {
    const { first } = seamOf(pieces, 'front-side');
    expect(notchSeam(pieces, 'princess', 'n1', edgeLength(first) + 1)).toMatchObject({
      refused: { code: 'notch-off-seam' },
    });
    expect(notchSeam(pieces, 'princess-left', 'n1', 0)).toMatchObject({ refused: { code: 'no-such-line' } });
    expect(
      notchSeam(
        pieces.filter((p) => p.id !== 'front-side'),
        'princess',
        'n1',
        0,
      ),
    ).toMatchObject({
      refused: { code: 'no-such-line' },
    });
  });

  it('say which edges of the block the seam runs between', () => {
    const side = pieces.find((p) => p.id === 'front-side')!;
    expect(seamEnds(side, 'princess')).toEqual(['right/shoulder', 'right/waist']);
  });

  it('go along when the corner they stand at is smoothed; others within the curve keep it off', () => {
    const marked = notchSeam(pieces, 'princess', 'n1', 0);
    if ('refused' in marked) throw new Error(marked.refused.code);
    for (const piece of marked.ok.filter((p) => p.id !== 'back')) {
      const smooth = smoothSeam(piece, BUST, 30);
      if ('refused' in smooth) throw new Error(smooth.refused.code);
      const seam = partedSeam(smooth.ok, 'princess')!;
      expect(
        offOf(
          seam,
          smooth.ok.notches.find((m) => m.id === 'n1')!,
        ),
      ).toBeCloseTo(0, 9);
    }
    const near = notchSeam(marked.ok, 'princess', 'n2', 20);
    if ('refused' in near) throw new Error(near.refused.code);
    expect(
      smoothSeam(
        near.ok.find((p) => p.id === 'front-side')!,
        BUST,
        30,
      ),
    ).toMatchObject({
      refused: { code: 'smooth-covers-notch', detail: { notch: 'n2' } },
    });
  });
});
