import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Command } from '../../src/lib/recipe/types.ts';
import { edited, finding, markOf, stateOf } from './marks.ts';

const THETA = (18.5 * Math.PI) / 180;

describe('the leftover', () => {
  it('is about 2 d sin(θ/2), a little less for the curve of line and bridge (trade notes, derived)', () => {
    for (const d of [12, 17, 22]) {
      const mark = markOf(
        'leftover',
        edited('leftover', (c) => c, { d1: d, d2: d }),
      );
      for (const dart of ['right', 'left']) {
        const { measured } = finding(mark, 'leftover/over-limit', { fabric: 'knit', dart });
        const e = 2 * d * Math.sin(THETA / 2);
        expect(measured).toBeGreaterThan(e * 0.9);
        expect(measured).toBeLessThan(e * 1.1);
      }
    }
  });

  it('taken out by a typed amount shows the amount, and is right within 1.6 mm of what was measured', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 12, noNaN: true }), (amount) => {
        const attempt = edited('leftover', (c) =>
          c.do === 'take-out' && c.dart === 'right' ? { ...c, amount } : c,
        );
        const { measured, expected, state, cause } = finding(markOf('leftover', attempt), 'leftover/amount', {
          dart: 'right',
        });
        expect(measured).toBeCloseTo(amount, 6);
        const off = amount - (expected as number);
        expect(state).toBe(Math.abs(off) <= 1.6 ? 'right' : 'wrong');
        if (state === 'wrong') expect(cause!.code).toBe(off > 0 ? 'too-much-taken' : 'too-little-taken');
      }),
      { numRuns: 15 },
    );
  });

  it('has to be treated for both fabrics, whatever the attempt’s own', () => {
    for (const fabric of ['knit', 'woven'] as const) {
      const mark = markOf(
        'leftover',
        edited('leftover', (c) => ('piece' in c && c.piece.includes('@') ? [] : c), { fabric }),
      );
      expect(mark.verdict).toBe('notReady');
      expect(stateOf(mark, 'leftover/bridged', { fabric: 'woven' })).toBe('missing');
    }
  });
});

describe('allowances', () => {
  const width = (mm: number, fabric: 'knit' | 'woven' = 'knit') =>
    markOf(
      'allowances',
      edited(
        'allowances',
        (c) => (c.do === 'allow' && /style|shoulder|side/.test(c.group) ? { ...c, width: mm } : c),
        { fabric },
      ),
    ).verdict;

  // 3/8 in for a knit and 5/8 in for a woven: trade notes (read: fashion-incubator.com; common practice); metric 10 and 15 mm.
  it.each([
    ['knit', 9.525, 'accepted'],
    ['knit', 10, 'accepted'],
    ['knit', 15.875, 'needsWork'],
    ['knit', 4.7625, 'needsWork'],
    ['woven', 15.875, 'accepted'],
    ['woven', 15, 'accepted'],
    ['woven', 9.525, 'needsWork'],
  ] as const)('of a %s’s seams, %f mm: %s', (fabric, mm, verdict) => expect(width(mm, fabric)).toBe(verdict));

  it('are not asked for before the seam is treated, and are wrong when they are there before', () => {
    const attempt = edited('allowances');
    const commands = attempt.commands.filter((c) => c.step !== 'leftover');
    expect(markOf('allowances', { ...attempt, commands }).verdict).toBe('needsWork');
    const none = commands.filter((c) => c.step !== 'allowances');
    expect(markOf('allowances', { ...attempt, commands: none }).verdict).toBe('notReady');
  });
});

describe('the grainline', () => {
  const at = (degrees: number) =>
    markOf(
      'label-and-grain',
      edited('label-and-grain', (c) =>
        c.do === 'grain' && c.piece === 'lower' ? { ...c, angle: (degrees * Math.PI) / 180 } : c,
      ),
    );

  it('is right within a degree, either way up, and shows the angle with its sign', () => {
    for (const degrees of [0, 0.9, -0.9, 180, 179.2, -180]) expect(at(degrees).verdict).toBe('accepted');
    for (const degrees of [1.1, -1.1, 178, 90]) expect(at(degrees).verdict).toBe('needsWork');
    expect(finding(at(-3), 'grain/direction', { piece: 'lower' }).measured).toBeCloseTo(
      (-3 * Math.PI) / 180,
      9,
    );
  });

  it('names the part it was copied from: one that was turned by the dart’s angle', () => {
    const { cause } = finding(at(-18.5), 'grain/direction', { piece: 'lower' });
    expect(cause!.code).toBe('copied-from-turned-part');
    expect(cause!.amount).toBeCloseTo(-THETA, 9);
  });
});

describe('walking the seams', () => {
  const saying = (seam: string, says: 'match' | 'eased' | 'differs', fabric: 'knit' | 'woven') =>
    stateOf(
      markOf(
        'walk-the-seams',
        edited('walk-the-seams', (c): Command => (c.do === 'walk' && c.seam === seam ? { ...c, says } : c), {
          fabric,
        }),
      ),
      'walked/says',
      { seam },
    );

  it.each([
    ['style-line', 'eased', 'knit', 'right'],
    ['style-line', 'match', 'knit', 'wrong'],
    ['style-line', 'match', 'woven', 'right'],
    ['style-line', 'eased', 'woven', 'wrong'],
    ['right/shoulder', 'match', 'knit', 'right'],
    ['right/shoulder', 'eased', 'knit', 'right'],
    ['left/side', 'match', 'woven', 'right'],
    ['left/side', 'eased', 'woven', 'wrong'],
    ['left/side', 'differs', 'woven', 'wrong'],
  ] as const)('%s said to be "%s" for the %s is %s', (seam, says, fabric, state) => {
    expect(saying(seam, says, fabric)).toBe(state);
  });

  it('on the pieces of the other fabric does not count', () => {
    const attempt = edited('walk-the-seams', (c) => (c.do === 'walk' ? { ...c, as: 'woven' as const } : c));
    expect(markOf('walk-the-seams', attempt).verdict).toBe('notReady');
  });
});
