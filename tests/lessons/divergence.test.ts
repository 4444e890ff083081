import { describe, expect, it } from 'vitest';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { firstDivergence } from '../../src/lib/lessons/divergence.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { courseAttempt, pass } from '../golden/course/case.ts';

const lesson = loadLesson('waist-to-side')!;
/** The whole lesson as it is worked, with its commands edited. */
function attemptOf(edit: (commands: readonly Command[]) => readonly Command[]): Attempt {
  const whole = courseAttempt(lesson, pass('prove', 'whole'));
  return { ...whole, commands: edit(whole.commands) };
}
const turned =
  (change: (turn: Extract<Command, { do: 'turn' }>) => Command) => (commands: readonly Command[]) =>
    commands.map((c) => (c.do === 'turn' ? change(c) : c));

describe('the first divergence', () => {
  it('is nowhere in a right attempt, nor in one that only stops too early', () => {
    const whole = attemptOf((c) => c);
    expect(firstDivergence(lesson, whole)).toBeUndefined();
    for (let n = 0; n < whole.commands.length; n++)
      expect(firstDivergence(lesson, { ...whole, commands: whole.commands.slice(0, n) })).toBeUndefined();
  });

  it('is the cut that went through, and not the right turn after it', () => {
    const attempt = attemptOf((all) => all.map((c) => (c.do === 'cut-slash' ? { ...c, past: 3 } : c)));
    const found = firstDivergence(lesson, attempt);
    expect(found?.command.do).toBe('cut-slash');
    expect(found?.step).toBe('move');
  });

  it('is the turn about a slipped pin, and says what of the gap stems from it', () => {
    const attempt = attemptOf(
      turned((c) => ({ ...c, about: { landmark: 'right/bust-point', dx: 14, dy: 9 } })),
    );
    const found = firstDivergence(lesson, attempt);
    expect(found?.command.do).toBe('turn');
    const drift = found?.stemming.find(({ code }) => code === 'dart-moved/pivot');
    expect(drift!.measured).toBeGreaterThan(5);
    // Put right, nothing of it is left.
    expect(drift!.without).toBeLessThan(1e-9);
  });

  it('is not a turn that is merely too small: it can still be gone on with', () => {
    expect(firstDivergence(lesson, attemptOf(turned((c) => ({ ...c, by: { share: 0.5 } }))))).toBeUndefined();
  });
});
