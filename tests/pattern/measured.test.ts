import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chainLength, placeAtLength } from '../../src/lib/geometry/chain.ts';
import { subchain } from '../../src/lib/geometry/subchain.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { Measured } from '../../src/lib/pattern/measured.ts';
import { chains, points } from '../geometry/arbitrary.ts';

const fractions = fc.array(fc.double({ min: -0.1, max: 1.1, noNaN: true }), { minLength: 1, maxLength: 6 });

/** What a call gives, or that it throws. */
const outcome = (call: () => unknown): unknown => {
  try {
    return call();
  } catch (error) {
    return String(error);
  }
};

describe('a chain that is measured once', () => {
  test('gives the same places, bit for bit, in whatever order they are asked for', () => {
    fc.assert(
      fc.property(chains, fractions, (chain, asked) => {
        const measured = new Measured(chain);
        const length = chainLength(chain);
        for (const f of [...asked, 0, 1, ...asked]) {
          expect(measured.placeAt(f * length)).toEqual(placeAtLength(chain, f * length));
        }
        expect(measured.length).toBe(length);
      }),
    );
  });

  test('gives the same stretches, and refuses one of no length alike', () => {
    fc.assert(
      fc.property(chains, fractions, (chain, asked) => {
        const measured = new Measured(chain);
        const length = chainLength(chain);
        for (const from of asked) {
          for (const to of asked) {
            const [a, b] = [from * length, to * length];
            expect(outcome(() => measured.stretch(a, b))).toEqual(outcome(() => subchain(chain, a, b)));
          }
        }
      }),
    );
  });

  test('tells how far along its nearest point lies', () => {
    fc.assert(
      fc.property(chains, points, (chain, p) => {
        expect(new Measured(chain).nearest(p)).toBe(nearestOnChain(chain, p).length);
      }),
    );
  });
});
