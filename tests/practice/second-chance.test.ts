import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../src/lib/grading/grade.ts';
import type { Finding } from '../../src/lib/grading/types.ts';
import { drillId } from '../../src/lib/lessons/drills/lesson.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { drillOfId } from '../../src/lib/practice/drill-skills.ts';
import { occasionsOf } from '../../src/lib/practice/occasions.ts';
import { openCodes } from '../../src/lib/practice/rating.ts';
import {
  chanceOf,
  isDrilled,
  openChances,
  wasShown,
  type Chance,
} from '../../src/lib/practice/second-chance.ts';
import { secondDrill } from '../../src/lib/practice/second-drill.ts';
import type { Log, ProgressEvent } from '../../src/lib/progress/events.ts';
import { mergeLogs } from '../../src/lib/progress/merge.ts';
import { credit, DAY, events, HOUR, mark, MINUTE, T0, worked, wrong } from './history.ts';

const told = (chances: readonly Chance[]) =>
  chances.flatMap(({ mistakes }) => mistakes.map(({ of, code }) => `${of.id} ${code}`));
const drilled = (chance: Chance | undefined) => {
  if (!chance || !isDrilled(chance)) throw new Error('there should be a drill');
  return chance;
};
let credits = 0;
const credited = (log: Log, { mistakes }: Chance): Log =>
  mergeLogs(
    log,
    mistakes.map(({ of, code }) => ({ ...credit(T0 + 90 * DAY, of, code), id: `credit-${++credits}` })),
  );

describe('what a mark says was wrong', () => {
  const findings: fc.Arbitrary<readonly Finding[]> = fc.array(
    fc.record({
      check: fc.constant('a'),
      unit: fc.constant('text' as const),
      state: fc.constantFrom('right', 'wrong', 'missing', 'note'),
      code: fc.constantFrom('a/b', 'a/c', 'd/e'),
    }),
  );

  it('is all that a mark that needs work names: with something missing it is not ready', () => {
    fc.assert(
      fc.property(findings, (all) => {
        fc.pre(verdictOf(all) === 'needsWork');
        const wrongOnes = all.filter(({ state }) => state === 'wrong').map(({ code }) => code);
        expect(openCodes(all)).toEqual([...new Set(wrongOnes)].sort());
      }),
    );
  });
});

describe('chances that are open', () => {
  it('the newest first, what one drill isolates together', () => {
    const old = wrong(T0, { codes: ['dart-finished/cap'], skill: 'waist/drawn/cap', step: 'cap' });
    const fresh = wrong(T0 + DAY, { codes: ['dart-moved/opening', 'dart-moved/residual'] });
    const right = mark(T0 + DAY + MINUTE);
    const open = openChances([old, fresh, right]);
    expect(told(open)).toEqual([
      `${fresh.id} dart-moved/opening`,
      `${fresh.id} dart-moved/residual`,
      `${old.id} dart-finished/cap`,
    ]);
    expect(open).toHaveLength(2);
    expect(open[0]!.by).toEqual({ exercise: 'slash', step: 'move', skills: ['waist-to-side/slash/plain'] });
  });

  it('none of unfinished work, and none of what was checked once more after it was right', () => {
    const unfinished = mark(T0, { verdict: 'notReady', codes: ['dart-moved/cut'] });
    const after = [mark(T0 + MINUTE), wrong(T0 + 2 * MINUTE)];
    expect(openChances([unfinished, ...after])).toEqual([]);
    expect(chanceOf([unfinished, ...after], after[1]!.id, 'dart-moved/residual')).toBeUndefined();
  });

  it('one goes when the skill is later got right at once and without help, not by a help', () => {
    const mistake = wrong(T0);
    const later = T0 + DAY;
    expect(openChances([mistake, mark(later)])).toEqual([]);
    expect(chanceOf([mistake, mark(later)], mistake.id, 'dart-moved/residual')).toBeDefined();
    for (const helped of [
      [mark(later, { hints: 1 })],
      [mark(later, { worked: true })],
      [worked(later), mark(later + MINUTE)],
      [mark(later, { skill: 'notches' })],
    ])
      expect(told(openChances([mistake, ...helped]))).toEqual([`${mistake.id} dart-moved/residual`]);
    // Before it, it says nothing.
    expect(openChances([mark(T0 - DAY), mistake])).toHaveLength(1);
  });

  it('a mistake of another version has none', () => {
    const other = wrong(T0, { codes: ['a-check-gone/what'], skill: 'label-grain' });
    expect(openChances([other])[0]!.by).toBeUndefined();
    expect(openChances([other]).filter(isDrilled)).toEqual([]);
  });

  it('are the same in whatever order logs are merged, each mistake once, and a credit takes away just its own', () => {
    fc.assert(
      fc.property(events, fc.integer({ min: 0, max: 30 }), (all, cut) => {
        const log = mergeLogs(all);
        const open = openChances(log);
        expect(openChances(mergeLogs(all.slice(cut), all.slice(0, cut), all))).toEqual(open);
        const before = told(open);
        expect(new Set(before).size).toBe(before.length);
        for (const chance of open) {
          const own = told([chance]);
          const after = told(openChances(credited(log, chance)));
          expect(after).toEqual(before.filter((one) => !own.includes(one)));
          // Twice is as good as once.
          expect(told(openChances(credited(credited(log, chance), chance)))).toEqual(after);
        }
      }),
    );
  });

  it('come to an end: crediting the first again and again leaves none, and every mistake of an open occasion is made good', () => {
    fc.assert(
      fc.property(events, (all) => {
        let log: Log = mergeLogs(all);
        const open = openChances(log);
        for (let n = told(open).length; n > 0;) {
          log = credited(log, openChances(log)[0]!);
          const left = told(openChances(log)).length;
          expect(left).toBeLessThan(n);
          n = left;
        }
        expect(openChances(log)).toEqual([]);
        const first = new Set(open.map(({ occasion }) => occasion.marks[0]!.id));
        for (const { marks, madeGood } of occasionsOf(log))
          if (first.has(marks[0]!.id)) expect(madeGood).toBe(true);
      }),
    );
  });
});

describe('the drill of a chance', () => {
  const drill = 'drill-slash-12-knit-strict-3';
  const exercise = { kind: 'drill', id: drill, content: 1 } as const;
  const mistake = wrong(T0, { exercise });
  const chance = drilled(openChances([mistake])[0]);

  it('is the same each time, another than the one of the mistake, with its cloth and its tolerances', () => {
    const { drill: found, id } = secondDrill(chance, [mistake])!;
    expect(secondDrill(chance, [mistake])!.drill).toEqual(found);
    expect(id).toBe(drillId(variantOf(found)));
    expect(found).toMatchObject({ exercise: 'slash', fabric: 'knit', band: 'strict', hints: 1 });
    expect(found.seed).not.toBe(12);
    expect(found).not.toHaveProperty('scale');
    // Whatever the mark's id, never the same again.
    fc.assert(
      fc.property(fc.uuid(), (uuid) => {
        const one = drilled(openChances([{ ...mistake, id: uuid }])[0]);
        expect(secondDrill(one, [])!.drill.seed).not.toBe(12);
      }),
    );
  });

  it('is measured on paper of the same scale', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('half', 'full', 'any'),
        fc.integer({ min: 0, max: 999_999 }),
        (scale, seed) => {
          const id = `drill-2-finish-${seed}-woven-usual-3-${scale}`;
          const cap = wrong(T0, {
            exercise: { kind: 'drill', id, content: 1 },
            codes: ['dart-finished/point'],
            skill: 'side/drawn/cap',
          });
          const found = secondDrill(drilled(openChances([cap])[0]), [cap])!.drill;
          expect(variantOf(found).scale).toBe(variantOf(drillOfId(id)!).scale);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('is over when the solution was seen in it, and then another comes; hints leave it', () => {
    const { id, drill: first } = secondDrill(chance, [mistake])!;
    const in1 = { exercise: { kind: 'drill', id, content: 1 } as const };
    const hinted: ProgressEvent[] = [mistake, mark(T0 + HOUR, { ...in1, hints: 1, verdict: 'notReady' })];
    expect(wasShown(hinted, id)).toBe(false);
    expect(secondDrill(chance, hinted)!.drill).toEqual(first);
    const shown = [mistake, worked(T0 + HOUR, in1)];
    expect(wasShown(shown, id)).toBe(true);
    expect(secondDrill(chance, shown)!.drill).not.toEqual(first);
    expect(wasShown([mark(T0, { ...in1, worked: true })], id)).toBe(true);
  });
});
