import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { polyline } from '../../src/lib/geometry/polyline.ts';
import type { Anchor, Command } from '../../src/lib/recipe/types.ts';
import type { Where } from '../../src/lib/grading/types.ts';
import { sentence } from '../../src/lib/strings/sentence.ts';
import { contextOf, edited, finding, markOf, stateOf } from './marks.ts';

const points =
  (change: (points: readonly Anchor[]) => readonly Anchor[]) =>
  (c: Command): Command =>
    c.do === 'draw-line' ? { ...c, points: change(c.points) } : c;

describe('reading the block', () => {
  it('takes a pin within 5 mm of its landmark, and not one a little farther', () => {
    const off = (dx: number) =>
      markOf(
        'read-the-block',
        edited('read-the-block', (c) =>
          c.do === 'identify' && c.what === 'bust-point'
            ? { ...c, at: { landmark: 'right/bust-point', dx } }
            : c,
        ),
      );
    expect(stateOf(off(4.9), 'landmarks-found/bust-point')).toBe('right');
    expect(stateOf(off(5.1), 'landmarks-found/bust-point')).toBe('wrong');
    expect(finding(off(5.1), 'landmarks-found/bust-point').measured).toBeCloseTo(5.1, 9);
  });

  it.each(['F1', 'F3', 'F5'])(
    'expects the angle of figure %s that the draft gives it: B/4 − 2.5 degrees (Bunka, memory)',
    (figure) => {
      const bust = { F1: 80, F3: 88, F5: 104 }[figure]!;
      const { expected } = finding(
        markOf(
          'read-the-block',
          edited('read-the-block', (c) => c, { figure }),
        ),
        'readings/dart-angle',
      );
      expect(expected).toBeCloseTo(((bust / 4 - 2.5) * Math.PI) / 180, 9);
    },
  );

  it('expects an intake of 2 L sin(θ/2) (trade notes, derived)', () => {
    const mark = markOf('read-the-block', edited('read-the-block'));
    const value = (what: string) => finding(mark, `readings/${what}`).expected as number;
    expect(value('intake')).toBeCloseTo(2 * value('leg-length') * Math.sin(value('dart-angle') / 2), 6);
  });
});

describe('opening out', () => {
  it('finds how far the mirror image lies off when another edge was taken', () => {
    const attempt = edited('open-out', (c) =>
      c.do === 'open-out' ? { ...c, about: 'right/side-lower' } : c,
    );
    const mark = markOf('open-out', attempt);
    const { measured, cause, about } = finding(mark, 'opened-out/mirror');
    expect(mark.verdict).toBe('needsWork');
    expect(cause!.code).toBe('mirrored-about-other-edge');
    expect(about!.edge).toBe('right/side-lower');
    // The side seam stands upright at the block's width: two mirrors in parallel lines move by twice the distance between them.
    const { before } = contextOf('open-out', attempt);
    const width = -before.pieces[0]!.parts[0]!.landmarks['right/side-waist']!.x;
    expect(measured).toBeCloseTo(2 * width, 6);
  });
});

describe('the style line', () => {
  it('passes as near as the shortest way to a fine polyline of it says', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 28, noNaN: true }),
        fc.double({ min: 8, max: 28, noNaN: true }),
        (d1, d2) => {
          const attempt = edited('style-line', (c) => c, { d1, d2 });
          const mark = markOf('style-line', attempt);
          const { after } = contextOf('style-line', attempt);
          for (const side of ['right', 'left']) {
            const bust = after.opened!.parts[0]!.landmarks[`${side}/bust-point`]!;
            const fine = polyline(after.lines[0]!.chain, 1e-4);
            const shortest = Math.min(...fine.map((p) => Math.hypot(p.x - bust.x, p.y - bust.y)));
            const { measured, state } = finding(mark, 'line-passes/distance', { side });
            expect(Math.abs(measured! - shortest)).toBeLessThan(0.02);
            expect(state).toBe(measured! >= 9.5 && measured! <= 25.5 ? 'right' : 'wrong');
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  it('drawn from the side to the shoulder is the same line', () => {
    const mark = markOf('style-line', edited('style-line'));
    const other = markOf(
      'style-line',
      edited(
        'style-line',
        points((all) => [...all].reverse()),
      ),
    );
    expect(other.verdict).toBe('accepted');
    expect(other.findings.map((f) => [f.code, f.measured?.toFixed(6)])).toEqual(
      mark.findings.map((f) => [f.code, f.measured?.toFixed(6)]),
    );
  });

  it('that could not be drawn at all is a fault with its reason; one never drawn is only missing', () => {
    const gone = markOf(
      'style-line',
      edited(
        'style-line',
        points(() => [
          { on: 'no/edge', at: 0 },
          { on: 'right/shoulder', at: 0.5 },
        ]),
      ),
    );
    expect(gone.verdict).toBe('needsWork');
    expect(finding(gone, 'line-ends/drawn').cause!.code).toBe('no-such-place');
    expect(
      markOf(
        'style-line',
        edited('style-line', () => []),
      ).verdict,
    ).toBe('notReady');
  });
});

describe('notches', () => {
  const moved = (id: string, mm: number) => {
    const attempt = edited('notches');
    const { after } = contextOf('notches', attempt);
    const length = after.pieces
      .flatMap((p) => p.parts)
      .flatMap((p) => p.lines)
      .find((l) => l.id === 'line')!.origin.to;
    return markOf(
      'notches',
      edited('notches', (c) => (c.do === 'notch' && c.id === id ? { ...c, at: c.at + mm / length } : c)),
    );
  };

  it('that stand far from where they belong are told with how far off, and shown there', () => {
    // The sample's n2 stands 34 mm after the right foot, n1 before it.
    const far = finding(moved('n2', 50), 'notches-placed/after-foot', { side: 'right' });
    expect(far.state).toBe('wrong');
    expect(far.cause).toMatchObject({ code: 'notch-elsewhere' });
    expect(far.cause!.amount).toBeCloseTo(84, 6);
    expect(sentence(far, 'mm')).toContain('stands 84 mm off; it should stand no farther than 50 mm.');
    const { from, to } = far.where as Extract<Where, { kind: 'dimension' }>;
    const apart = Math.hypot(to.x - from.x, to.y - from.y);
    // The line bends, so that the straight way is a little shorter.
    expect(apart).toBeGreaterThan(80);
    expect(apart).toBeLessThanOrEqual(84);
    // Farther along it stands near the other foot, but there another one is meant.
    const farther = finding(moved('n2', 100), 'notches-placed/after-foot', { side: 'right' });
    expect(farther.cause!.code).toBe('notch-elsewhere');
    expect(farther.cause!.amount).toBeCloseTo(134, 6);
    // It belongs to the right foot alone.
    expect(finding(moved('n2', 50), 'notches-placed/before-foot', { side: 'left' }).cause?.code).not.toBe(
      'notch-elsewhere',
    );
  });

  it('stand 30 to 50 mm from the connector’s place, 1.6 mm more or less', () => {
    // The sample's n2 stands 34 mm after the right foot.
    expect(stateOf(moved('n2', -5.5), 'notches-placed/after-foot', { side: 'right' })).toBe('right');
    expect(stateOf(moved('n2', -5.7), 'notches-placed/after-foot', { side: 'right' })).toBe('wrong');
    expect(stateOf(moved('n2', 17.5), 'notches-placed/after-foot', { side: 'right' })).toBe('right');
    expect(stateOf(moved('n2', 17.7), 'notches-placed/after-foot', { side: 'right' })).toBe('wrong');
    expect(finding(moved('n2', 20), 'notches-placed/after-foot', { side: 'right' }).measured).toBeCloseTo(
      54,
      6,
    );
  });
});
