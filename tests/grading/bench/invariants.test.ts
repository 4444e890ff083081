import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { flatten } from './flat.ts';
import { TAU } from '../../../src/lib/geometry/trig.ts';
import { invariantsOf, type Invariants } from '../../../src/lib/grading/bench/invariants.ts';
import { startWork } from '../../../src/lib/recipe/start.ts';
import type { Command, Work } from '../../../src/lib/recipe/types.ts';
import { anyMove, B, done, extended, front, on, openingOf, refusal, slashed } from '../../recipe/darts.ts';
import { sampleAttempt } from '../../recipe/sample.ts';
import { real } from '../../support/real.ts';

// Many runs of a property; a busy machine must not make them fail.
vi.setConfig({ testTimeout: 60_000 });

const half = startWork({ figure: 'F2', form: 'side' });
const of = (work: Work): Invariants => invariantsOf(work, 'woven');
const moved = (by: Command & { do: 'turn' }): Work =>
  done(
    half,
    { do: 'extend-dart', dart: 'right', to: B() },
    ...slashed('slash', on('right/shoulder', 0.5)),
    by,
  );
const turn = (share: number): Command & { do: 'turn' } => ({
  do: 'turn',
  dart: 'right',
  into: 'slash',
  part: 'freed',
  about: B(),
  by: share === 1 ? { until: 'legs-meet' } : { share },
});
const seam = (invariants: Invariants, id: string) => invariants.seams.find((one) => one.id === id)!;

describe('round the bust point', () => {
  it('all is paper until the working dart reaches it', () => {
    const [bust] = of(half).bustPoints;
    expect(bust).toMatchObject({ id: 'right/bust-point', expected: TAU, darts: [], short: ['right'] });
    expect(bust!.paper).toBeCloseTo(TAU, 12);
  });

  it('as much opens as closes: what is open together is the block’s angle, however it is shared', () => {
    for (const share of [0.25, 0.6, 1]) {
      const [bust] = of(moved(turn(share))).bustPoints;
      const open = Object.fromEntries(bust!.darts.map((dart) => [dart.id, dart.open]));
      // Source: trade notes, "the angle is what counts": a share of it goes, the rest stays.
      expect(open['slash']).toBeCloseTo(half.block.facts.dartAngle * share, 10);
      expect(open['right']).toBeCloseTo(half.block.facts.dartAngle * (1 - share), 10);
      expect(TAU - bust!.paper).toBeCloseTo(half.block.facts.dartAngle, 10);
      expect(bust!.beside).toBeCloseTo(0, 10);
    }
  });

  it('the opening on the table is that of the angle: 2 L sin(angle / 2)', () => {
    const work = moved(turn(1));
    const { width, legs } = openingOf(front(work), 'slash');
    const slash = of(work).bustPoints[0]!.darts.find(({ id }) => id === 'slash')!;
    // Source: derived (isosceles triangle), with the sine of the machine, which the app itself does not use.
    expect(width).toBeCloseTo(2 * legs[0] * Math.sin(slash.open / 2), 8);
  });

  it('nothing can be told while a dart ends beside it', () => {
    const work = done(half, { do: 'extend-dart', dart: 'right', to: B(6, 4) });
    expect(of(work).bustPoints[0]).toMatchObject({ expected: undefined, short: [] });
  });

  it('of a front that is opened out there are two, each with its own dart', () => {
    const work = done(startWork({ figure: 'F4' }), { do: 'open-out', about: 'centre-front' });
    expect(of(work).bustPoints.map(({ id, short }) => [id, short])).toEqual([
      ['right/bust-point', ['right']],
      ['left/bust-point', ['left']],
    ]);
  });

  it('an opening along a connector is told beside the darts', () => {
    const { block, commands } = sampleAttempt('F3', 'woven', { upTo: 'separate' });
    const work = done(startWork(block), ...commands);
    for (const bust of of(work).bustPoints) {
      expect(bust.darts.every(({ open }) => Math.abs(open) < 1e-9)).toBe(true);
      expect(bust.beside).toBeCloseTo(work.block.facts.dartAngle, 10);
    }
  });
});

describe('paper', () => {
  it('of the whole front is twice the half', () => {
    const whole = startWork({ figure: 'F1' });
    const opened = done(whole, { do: 'open-out', about: 'centre-front' });
    expect(of(opened).area.sheets).toBeCloseTo(2 * of(whole).area.sheets, 6);
  });

  it('is as much as the sheets have when they are measured in short straight steps', () => {
    const work = moved(turn(0.4));
    // Source: the shoelace formula on points 0.05 mm apart; it knows nothing of darts or curves.
    expect(of(work).area.sheets).toBeCloseTo(flatten(front(work).parts), 0);
    expect(of(work).area.expected).toBeCloseTo(of(work).area.sheets, 6);
  });

  it('fits where a dart is drawn to a wrong point, too, and says what redrawn edges add', () => {
    const work = done(half, { do: 'extend-dart', dart: 'right', to: B(-12, 9) });
    const { area } = of(work);
    expect(area.sheets).not.toBeCloseTo(of(half).area.sheets, 0);
    expect(area.sheets).toBeCloseTo(area.expected, 6);
    expect(area.redrawn).toBe(0);
    const cap = done(
      half,
      { do: 'extend-dart', dart: 'right', to: B() },
      { do: 'back-off', dart: 'right', by: 30 },
    );
    expect(of(cap).area.sheets).toBeCloseTo(of(cap).area.expected, 6);
    expect(of(cap).area.redrawn).toBeGreaterThan(0);
  });
});

describe('seams', () => {
  it('the shoulders of the block differ by the ease of the back, which is meant', () => {
    const shoulder = seam(of(half), 'right/shoulder');
    expect(shoulder.difference).toBeCloseTo(-half.block.facts.backShoulderEase, 9);
    expect(shoulder.meant).toBeCloseTo(shoulder.difference, 9);
    expect(shoulder.worst).toBeCloseTo(0, 9);
  });

  it('keep their length when a dart is moved into them', () => {
    const [before, after] = [of(half), of(moved(turn(1)))];
    for (const id of ['right/shoulder', 'right/side'])
      expect(seam(after, id).a).toBeCloseTo(seam(before, id).a, 9);
    expect(seam(after, 'slash').difference).toBeCloseTo(0, 9);
    // A dart that is closed has no legs to be sewn.
    expect(seam(after, 'right')).toBeUndefined();
  });

  it('a gathered edge less its fullness is what it was', () => {
    const work = done(moved(turn(1)), {
      do: 'fullness',
      dart: 'slash',
      as: 'gathers',
      before: 20,
      after: 20,
    });
    const [was, is] = [of(half), of(work)];
    const shoulder = seam(is, 'right/shoulder');
    const [left] = is.leftovers;
    expect(left).toMatchObject({ dart: 'slash', kind: 'gathers' });
    expect(shoulder.a - left!.excess).toBeCloseTo(seam(was, 'right/shoulder').a, 9);
    expect(shoulder.worst).toBeCloseTo(0, 9);
    expect(seam(is, 'slash')).toBeUndefined();
  });

  it('of the cut style line differ by the leftover, which is told', () => {
    const { block, commands } = sampleAttempt('F3', 'woven', { upTo: 'separate' });
    const { seams, leftovers, bustPoints } = of(done(startWork(block), ...commands));
    const line = seams.find(({ id }) => id === 'style-line')!;
    expect(leftovers.map(({ kind }) => kind)).toEqual(['open', 'open']);
    // Source: derived. The banks of a cut are alike, so that the sides differ by their openings, one side's against the other's.
    const [first] = leftovers;
    const signed = leftovers.reduce(
      (sum, one) => sum + (one.piece === first!.piece ? 1 : -1) * one.excess,
      0,
    );
    expect(Math.abs(line.difference)).toBeCloseTo(Math.abs(signed), 6);
    expect(line.meant).toBe(0);
    expect(bustPoints).toHaveLength(2);
  });
});

it('on random bodies, darts and places: angle, area and seams are kept, and the opening is what was turned', () => {
  fc.assert(
    fc.property(anyMove, real(0.05, 1), (move, share) => {
      const start = startWork(move.block);
      const ready = done(start, ...extended(move));
      const [draw, cut] = slashed('slash', on(move.edge, move.at)) as [Command, Command];
      fc.pre(refusal(ready, draw) === undefined);
      const by = { share };
      const work = done(ready, draw, cut, {
        ...{ do: 'turn', dart: move.dart, into: 'slash', part: 'freed', about: B(), by },
      });
      const [before, after] = [of(ready), of(work)];
      const [bust] = after.bustPoints;
      expect(bust!.paper).toBeCloseTo(before.bustPoints[0]!.paper, 9);
      expect(bust!.paper).toBeCloseTo(bust!.expected!, 9);
      expect(bust!.darts.reduce((sum, { open }) => sum + open, 0)).toBeCloseTo(TAU - bust!.expected!, 9);
      expect(after.area.sheets).toBeCloseTo(before.area.sheets, 5);
      expect(after.area.sheets).toBeCloseTo(after.area.expected, 5);
      for (const { kind, id, a, b } of before.seams) {
        const now = seam(after, id);
        if (kind !== 'seam') continue;
        expect(now.a).toBeCloseTo(a, 8);
        expect(now.b).toBeCloseTo(b, 8);
      }
    }),
    { numRuns: 200 },
  );
});
