import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { translation } from '../../src/lib/geometry/isometry.ts';
import { movePart } from '../../src/lib/pattern/move.ts';
import type { Command, Turn } from '../../src/lib/recipe/types.ts';
import { contextOf, edited, finding, gradeContext, markOf, rounded, stateOf } from './marks.ts';
import { real } from '../support/real.ts';

/** Block F2: the dart's angle is B/4 − 2.5 degrees (Bunka draft, memory): 84 / 4 − 2.5 = 18.5°. */
const THETA = (18.5 * Math.PI) / 180;
const turn = (change: Partial<Turn>) => (c: Command) => (c.do === 'turn' ? { ...c, ...change } : c);

describe('a dart that was moved', () => {
  it('is accepted by each route, with the same verdict and measures', () => {
    const routes = [
      edited('first-dart'),
      edited(
        'first-dart',
        turn({ by: { angle: -contextOf('connectors', edited('connectors')).after.block.facts.dartAngle } }),
      ),
      edited('first-dart', (c) => c, { turn: 'rest' }),
    ].map((attempt) => markOf('first-dart', attempt));
    for (const mark of routes) {
      expect(mark.verdict).toBe('accepted');
      for (const code of ['dart-closed/pivot', 'dart-closed/residual'])
        expect(finding(mark, code).measured).toBeCloseTo(0, 9);
      expect(finding(mark, 'dart-closed/opening').measured).toBeCloseTo(
        finding(routes[0]!, 'dart-closed/opening').measured!,
        9,
      );
    }
  });

  it('is accepted when the pieces are separated first and the dart is closed then', () => {
    const first = edited('separate', (c) => c, { separateFirst: true });
    const last = edited('separate');
    for (const step of ['first-dart', 'second-dart', 'separate'] as const) {
      expect(markOf(step, first).verdict).toBe('accepted');
      expect(markOf(step, last).verdict).toBe('accepted');
    }
    expect(rounded(markOf('separate', first).findings)).toEqual(rounded(markOf('separate', last).findings));
  });

  it('opens the line by 2 L sin(θ/2) at the shoulder (trade notes, derived)', () => {
    const attempt = edited('first-dart');
    const { after } = contextOf('first-dart', attempt);
    const line = after.lines[0]!.chain[0]!.a;
    const bust = after.opened!.parts[0]!.landmarks['right/bust-point']!;
    const leg = Math.hypot(line.x - bust.x, line.y - bust.y);
    const opening = finding(markOf('first-dart', attempt), 'dart-closed/opening');
    expect(opening.measured).toBeCloseTo(2 * leg * Math.sin(THETA / 2), 6);
  });

  it('shows the gap 2 L sin(δ/2) that an angle δ too small leaves, and an overlap with a minus', () => {
    fc.assert(
      fc.property(real(0.02, 0.2), fc.boolean(), (delta, over) => {
        const angle = -(over ? THETA + delta : THETA - delta);
        const mark = markOf('first-dart', edited('first-dart', turn({ by: { angle } })));
        const { measured, state, cause } = finding(mark, 'dart-closed/residual');
        // The leg runs from the bust point to the side: its length is what the learner reads in step 1.
        const read = edited('read-the-block').commands.find(
          (c) => c.do === 'read' && c.what === 'leg-length',
        );
        const gap = 2 * (read as { value: number }).value * Math.sin(delta / 2);
        expect(measured).toBeCloseTo(over ? -gap : gap, 6);
        expect(state).toBe(gap > 3.2 ? 'wrong' : 'right');
        if (gap > 3.2) expect(cause).toMatchObject({ code: over ? 'closed-too-far' : 'not-closed' });
        if (gap > 3.2) expect(cause!.amount).toBeCloseTo(delta, 9);
      }),
      { numRuns: 20 },
    );
  });

  it('names a slipped pivot and by how much', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20, max: 20 }), fc.integer({ min: -20, max: 20 }), (dx, dy) => {
        const slip = Math.hypot(dx, dy);
        fc.pre(slip > 3);
        const by = { angle: -THETA };
        const mark = markOf(
          'first-dart',
          edited('first-dart', turn({ about: { landmark: 'right/bust-point', dx, dy }, by })),
        );
        const { measured, state, cause } = finding(mark, 'dart-closed/pivot');
        // A rotation by θ about a point s away moves the bust point by 2 s sin(θ/2) (derived).
        expect(measured).toBeCloseTo(2 * slip * Math.sin(THETA / 2), 6);
        expect(state).toBe('wrong');
        expect(cause).toMatchObject({ code: 'pivot-slipped', unit: 'mm' });
        expect(cause!.amount).toBeCloseTo(slip, 9);
      }),
      { numRuns: 20 },
    );
  });

  it('names parts that came off each other though the pin stood right', () => {
    const context = contextOf('first-dart', edited('first-dart'));
    const off = translation({ x: 3, y: -4 });
    const pieces = context.after.pieces.map((piece) => ({
      ...piece,
      parts: piece.parts.map((part) => (part.id === 'freed-right' ? movePart(part, off, []) : part)),
    }));
    const after = { ...context.after, pieces };
    const { measured, cause } = finding(
      gradeContext('first-dart', { ...context, after }),
      'dart-closed/pivot',
    );
    expect(measured).toBeCloseTo(5, 9);
    expect(cause).toEqual({ code: 'parts-apart' });
  });

  it('says which part was turned, and that its old grain is void', () => {
    for (const turn of ['freed', 'rest'] as const) {
      const mark = markOf(
        'first-dart',
        edited('first-dart', (c) => c, { turn }),
      );
      const { state, about } = finding(mark, 'dart-closed/grain');
      expect([state, about!.part]).toEqual(['note', turn === 'freed' ? 'freed-right' : 'front']);
    }
  });

  it('is not ready while nothing was slashed or turned, and never judged before', () => {
    const nothing = markOf(
      'first-dart',
      edited('first-dart', () => []),
    );
    expect(nothing.verdict).toBe('notReady');
    expect(nothing.findings).toHaveLength(1);
    const slashed = markOf(
      'first-dart',
      edited('first-dart', (c) => (c.do === 'turn' ? [] : c)),
    );
    expect(slashed.verdict).toBe('notReady');
    expect(stateOf(slashed, 'dart-closed/turned')).toBe('missing');
  });

  it('is marked from the learner’s own tip: a dart drawn to the sewn point may still be closed rightly', () => {
    const own = edited('first-dart', turn({ about: { landmark: 'right/sewn-point' } }));
    const commands = own.commands.map((c) =>
      c.do === 'extend-dart' && c.dart === 'right' ? { ...c, to: { landmark: 'right/sewn-point' } } : c,
    );
    const attempt = { ...own, commands };
    expect(markOf('working-darts', attempt).verdict).toBe('needsWork');
    expect(stateOf(markOf('first-dart', attempt), 'dart-closed/pivot')).toBe('right');
    expect(stateOf(markOf('first-dart', attempt), 'dart-closed/residual')).toBe('right');
  });
});

describe('a connector', () => {
  it('says how much wider the opening becomes: 2 (d′ − d) sin(θ/2) (trade notes, derived)', () => {
    fc.assert(
      fc.property(real(0.02, 0.08), fc.boolean(), (share, on) => {
        const attempt = edited('connectors', (c) =>
          c.do === 'connect' && c.dart === 'right' ? { ...c, at: c.at + (on ? share : -share) } : c,
        );
        const { measured, expected, cause } = finding(markOf('connectors', attempt), 'connectors/foot', {
          dart: 'right',
        });
        expect(expected).toBeCloseTo(17, 6);
        expect(measured).toBeGreaterThan(17);
        expect(cause!.code).toBe('opening-wider');
        expect(cause!.amount).toBeCloseTo(2 * (measured! - 17) * Math.sin(THETA / 2), 6);
      }),
      { numRuns: 20 },
    );
  });
});
