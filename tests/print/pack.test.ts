import fc from 'fast-check';
import { expect, it } from 'vitest';
import { pack } from '../../src/lib/print/pack.ts';

const size = fc.record({
  width: fc.double({ min: 1, max: 400, noNaN: true }),
  height: fc.double({ min: 1, max: 400, noNaN: true }),
});

it('lays nothing out in no room', () => {
  expect(pack([], 100, 5)).toEqual({ spots: [], whole: { width: 0, height: 0 } });
});

it('lays boxes of any sizes out apart, inside the whole', () => {
  fc.assert(
    fc.property(
      fc.array(size, { minLength: 1, maxLength: 12 }),
      fc.double({ min: 50, max: 900, noNaN: true }),
      (boxes, width) => {
        const gap = 7;
        const { spots, whole } = pack(boxes, width, gap);
        expect(whole.width).toBeLessThanOrEqual(Math.max(width, ...boxes.map((box) => box.width)));
        boxes.forEach((a, i) => {
          const p = spots[i]!;
          expect(p.x + a.width).toBeLessThanOrEqual(whole.width);
          expect(p.y + a.height).toBeLessThanOrEqual(whole.height);
          boxes.slice(i + 1).forEach((b, j) => {
            const q = spots[i + 1 + j]!;
            const across = Math.max(q.x - (p.x + a.width), p.x - (q.x + b.width));
            const down = Math.max(q.y - (p.y + a.height), p.y - (q.y + b.height));
            // Sums of doubles: 7 mm less a rounding.
            expect(Math.max(across, down)).toBeGreaterThanOrEqual(gap - 1e-9);
          });
        });
      },
    ),
  );
});
