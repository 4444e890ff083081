import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply } from '../../src/lib/recipe/apply.ts';
import { replay, replayByStep } from '../../src/lib/recipe/replay.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Anchor, Command, Work } from '../../src/lib/recipe/types.ts';
import { sampleAttempt, STEPS } from './sample.ts';
import { real } from '../support/real.ts';

const sample = sampleAttempt('F2', 'woven');
const steps = replayByStep(sample, STEPS);
const after = (step: (typeof STEPS)[number]): Work => steps.get(step)!.after;
const code = (work: Work, command: Command): string => {
  const applied = apply(work, command);
  return 'refused' in applied ? applied.refused.code : 'done';
};
const bust: Anchor = { landmark: 'right/bust-point' };
const line = sample.commands.find((c) => c.do === 'draw-line')!;

describe('apply refuses, with a code, and leaves the work alone', () => {
  const start = startWork({ figure: 'F2' });

  it('what needs the front opened out', () => {
    expect(code(start, line)).toBe('not-opened');
    expect(code(start, { do: 'extend-dart', dart: 'right', to: bust })).toBe('not-opened');
    expect(code(start, { do: 'overlay', piece: 'front' })).toBe('not-opened');
  });

  it('opening out once something is drawn; until then another edge may be tried', () => {
    expect(code(start, { do: 'open-out', about: 'no/edge' })).not.toBe('done');
    expect(code(after('open-out'), { do: 'open-out', about: 'centre-front' })).toBe('done');
    expect(code(after('style-line'), { do: 'open-out', about: 'centre-front' })).toBe('already-drawn-on');
  });

  it('drawing once something is cut', () => {
    for (const step of ['first-dart', 'separate'] as const) {
      expect(code(after(step), line)).toBe('already-cut');
      expect(code(after(step), { do: 'notch', id: 'n9', line: 'line', at: 0.5 })).toBe('already-cut');
      expect(code(after(step), { do: 'remove-notch', id: 'n1' })).toBe('already-cut');
      expect(code(after(step), { do: 'extend-dart', dart: 'right', to: bust })).toBe('already-cut');
      expect(code(after(step), { do: 'connect', dart: 'right', line: 'line', at: 0.5 })).toBe('already-cut');
    }
  });

  it('what names something that is not there', () => {
    const work = after('connectors');
    const nowhere: Anchor = { landmark: 'no-landmark' };
    expect(code(work, { do: 'draw-line', line: 'line', points: [bust, nowhere] })).toBe('no-such-place');
    expect(code(work, { do: 'notch', id: 'n1', line: 'no-line', at: 0.5 })).toBe('no-such-line');
    expect(code(work, { do: 'notch', id: 'n1', line: 'centre-front', at: 0.5 })).toBe('no-such-line');
    expect(code(work, { do: 'remove-notch', id: 'n9' })).toBe('no-such-notch');
    expect(code(work, { do: 'connect', dart: 'right', line: 'no-line', at: 0.5 })).toBe('no-such-line');
    expect(code(work, { do: 'slash', dart: 'no-dart', line: 'line', past: 0 })).toBe('no-such-dart');
    expect(code(work, { do: 'separate', line: 'no-line' })).toBe('no-such-line');
    expect(code(work, { do: 'carry-notches', piece: 'sleeve' })).toBe('no-such-piece');
    expect(code(work, { do: 'walk', seam: 'sleeve', along: 'seam', says: 'match' })).toBe('no-such-seam');
    expect(
      code(work, { do: 'turn', dart: 'right', part: 'freed', about: nowhere, by: { until: 'legs-meet' } }),
    ).toBe('no-such-place');
    expect(
      code(work, { do: 'draw-line', line: 'centre-front', points: [bust, { landmark: 'neck-centre' }] }),
    ).toBe('name-taken');
    expect(code(work, { do: 'fly' } as unknown as Command)).toBe('unknown-command');
  });

  it('a line of one point drawn twice, as impossible', () => {
    expect(code(after('open-out'), { do: 'draw-line', line: 'line', points: [bust, bust] })).toBe(
      'impossible',
    );
  });

  it('turning before slashing, copying or separating twice, treating what is not there', () => {
    const turn = {
      do: 'turn',
      dart: 'right',
      part: 'freed',
      about: bust,
      by: { until: 'legs-meet' },
    } as const;
    expect(code(after('connectors'), turn)).toBe('not-slashed');
    expect(code(after('separate'), { do: 'separate', line: 'line' })).toBe('already-separated');
    expect(code(after('leftover'), { do: 'copy', as: 'woven' })).toBe('already-copied');
    expect(code(after('leftover'), { do: 'copy', as: 'knit' })).toBe('done');
    expect(
      code(after('separate'), { do: 'ease', piece: 'lower', dart: 'right', from: 'n1', to: 'n2' }),
    ).not.toBe('done');
  });
});

describe('apply', () => {
  it('moves a notch that is marked again, and rubs one out', () => {
    const notches = (work: Work) => work.pieces[0]!.parts[0]!.lines.find((l) => l.id === 'line')!.notches;
    const done = (work: Work, command: Command): Work => {
      const next = apply(work, command);
      if ('refused' in next) throw new Error(next.refused.code);
      return next.work;
    };
    const work = after('notches');
    expect(notches(work).map((n) => n.id)).toEqual(['n1', 'n2', 'n3', 'n4']);
    const moved = done(work, { do: 'notch', id: 'n1', line: 'line', at: 1 });
    expect(notches(moved).map((n) => n.id)).toEqual(['n2', 'n3', 'n4', 'n1']);
    expect(notches(done(moved, { do: 'remove-notch', id: 'n3' })).map((n) => n.id)).toEqual([
      'n2',
      'n4',
      'n1',
    ]);
  });

  it('places a piece without changing any number of it', () => {
    const work = after('separate');
    const next = apply(work, { do: 'place', piece: 'upper', dx: 40, dy: -10, angle: 0.2 });
    if ('refused' in next) throw new Error(next.refused.code);
    expect(next.work.pieces).toBe(work.pieces);
    expect(next.work.placed).toEqual({ upper: { dx: 40, dy: -10, angle: 0.2 } });
  });

  it('keeps the drafted back until both halves are trued, then has a left and a right half', () => {
    const backs = (work: Work) =>
      work.pieces
        .map((p) => p.id)
        .filter((id) => /^back.*@woven$/.test(id))
        .sort();
    const upTo = (n: number) => {
      const trues = sample.commands.map((c, i) => (c.do === 'true' ? i : -1)).filter((i) => i >= 0);
      return replay({ ...sample, commands: sample.commands.slice(0, trues[n]! + 1) }).work;
    };
    expect(backs(upTo(0))).toEqual(['back-right@woven', 'back@woven']);
    expect(backs(upTo(1))).toEqual(['back-left@woven', 'back-right@woven']);
  });

  /** Commands with everything in them likely to exist, in any order: the deeper in, the more of them can be followed. */
  const ids = [
    'right',
    'left',
    'line',
    'front',
    'upper',
    'lower',
    'back',
    'upper@woven',
    'lower@woven',
    'n1',
    'n4',
  ];
  const id = fc.constantFrom(
    ...ids,
    'style-line',
    'right/shoulder',
    'left/side',
    'centre-front',
    'freed',
    'waist',
    'x',
  );
  const unit = fc.oneof(real(0, 1), fc.constantFrom(0, 1, 0.5));
  const mm = fc.oneof(real(-10_000, 10_000), fc.constantFrom(0, 1, 10, 25, -25, 150));
  const anchor: fc.Arbitrary<Anchor> = fc.oneof(
    fc.record({
      on: fc.constantFrom('right/shoulder', 'left/side-lower', 'line', 'waist', 'right/dart-upper'),
      at: unit,
    }),
    fc.record({
      landmark: fc.constantFrom('right/bust-point', 'left/bust-point', 'neck-centre', 'right/dart-upper-end'),
      dx: mm,
    }),
    fc.record({
      inside: id,
      weights: fc.array(real(-2, 2), { minLength: 3, maxLength: 11 }),
    }),
  );
  const any = fc.record({
    do: fc.constantFrom(...new Set(sample.commands.map((c) => c.do)), 'place', 'remove-notch'),
    ...{
      what: id,
      at: fc.oneof(anchor, unit, mm),
      about: fc.oneof(anchor, id),
      line: id,
      id,
      dart: id,
      to: fc.oneof(anchor, id),
    },
    ...{
      points: fc.array(anchor, { minLength: 2, maxLength: 6 }),
      from: fc.oneof(fc.constantFrom('start', 'end'), id),
    },
    ...{
      past: mm,
      part: id,
      by: fc.oneof(fc.constant({ until: 'legs-meet' }), fc.record({ angle: mm })),
      piece: id,
    },
    ...{
      dx: mm,
      dy: mm,
      angle: unit,
      as: fc.constantFrom('knit', 'woven'),
      before: fc.oneof(mm, id),
      after: fc.oneof(mm, id),
    },
    ...{
      end: fc.constantFrom('start', 'end'),
      amount: fc.oneof(mm, fc.constant('measured')),
      edge: id,
      notch: id,
      group: id,
    },
    ...{
      width: mm,
      form: fc.constantFrom('mitre', 'square', 'reflect', 'step'),
      first: id,
      name: fc.string(),
      cut: fc.nat(5),
    },
    ...{
      rightSideUp: fc.boolean(),
      seam: id,
      along: fc.constant('seam'),
      says: fc.constant('match'),
      value: mm,
    },
  }) as unknown as fc.Arbitrary<Command>;
  /** A command made up of one of the sample's with some of its values replaced by others of the same kind. */
  const twisted = fc
    .tuple(fc.constantFrom(...sample.commands), any, fc.integer())
    .map(([real, other, mask]) => {
      const mixed: Record<string, unknown> = { ...real };
      Object.keys(mixed).forEach((key, i) => {
        const put = (other as unknown as Record<string, unknown>)[key];
        if (key !== 'do' && (mask >> i) % 4 === 0 && typeof put === typeof mixed[key]) mixed[key] = put;
      });
      return mixed as unknown as Command;
    });

  it('never throws, whatever is asked for at whatever moment', () => {
    const works = STEPS.map((step) => after(step));
    let followed = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...works),
        fc.array(twisted, { minLength: 1, maxLength: 4 }),
        (from, commands) => {
          let work = from;
          for (const command of commands) {
            const next = apply(work, command);
            if ('work' in next) {
              followed++;
              work = next.work;
            } else expect(next.refused.code).toMatch(/^[a-z][a-z-]*$/);
          }
        },
      ),
      { numRuns: 1500 },
    );
    expect(followed).toBeGreaterThan(100);
  }, 60_000);
});
