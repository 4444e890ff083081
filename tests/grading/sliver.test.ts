import { describe, expect, it } from 'vitest';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { gradeOne } from '../../src/lib/grading/grade.ts';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from '../recipe/sample.ts';

const lesson = loadLesson('slanted-seam')!;
const slivers = (attempt: Attempt) =>
  gradeOne(lesson, 'leftover', attempt).findings.filter((finding) => finding.check === 'sliver');

/** The attempt with its commands of one kind changed. */
const changed = (attempt: Attempt, change: (command: Command) => Command): Attempt => ({
  ...attempt,
  commands: attempt.commands.map(change),
});

describe('the overlay after the treatment', () => {
  // derived: area of a triangle from two sides and the sine of the angle between them, half of a·b·sin C.
  it.each(Object.keys(FIGURES))('shows on figure %s only the sliver that the take-out predicts', (figure) => {
    const found = slivers(sampleAttempt(figure, 'woven'));
    const areas = found.filter((finding) => finding.code === 'sliver/area');
    expect(areas).toHaveLength(2);
    for (const { measured, expected } of areas) {
      expect(measured).toBeLessThan(-100);
      expect(Math.abs(Number(measured) - Number(expected))).toBeLessThan(0.1);
    }
    const rest = found.filter((finding) => finding.code === 'sliver/rest');
    expect(rest).toHaveLength(4);
    for (const finding of rest) expect(finding.measured).toBeLessThan(1e-9);
  });

  it('tells when more was taken out than the excess', () => {
    const attempt = changed(sampleAttempt('F2', 'woven'), (command) =>
      command.do === 'take-out' ? { ...command, amount: 12 } : command,
    );
    const areas = slivers(attempt).filter((finding) => finding.code === 'sliver/area');
    expect(areas.map((finding) => finding.state)).toEqual(['note', 'note']);
  });

  it('has nothing to say of a piece that is not treated yet', () => {
    const attempt = sampleAttempt('F2', 'knit', { upTo: 'separate' });
    expect(slivers(attempt)).toEqual([]);
  });
});
