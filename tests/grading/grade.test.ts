import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LESSONS, stepFolders } from '../../src/cli/load-lessons.ts';
import { gradeLesson, gradeOne, gradeStep, verdictOf } from '../../src/lib/grading/grade.ts';
import { applyTo, compose, rotationByAngle } from '../../src/lib/geometry/isometry.ts';
import type { Isometry } from '../../src/lib/geometry/types.ts';
import type { Finding, FindingState } from '../../src/lib/grading/types.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import type { Attempt, Work } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { contextOf, edited, gradeContext, lesson, type StepId } from './marks.ts';

const found = (...states: FindingState[]): Finding[] =>
  states.map((state) => ({ check: 'x', code: 'x/y', state, unit: 'text' }));

describe('the verdict', () => {
  it.each([
    [[], 'notReady'],
    [['note'], 'notReady'],
    [['right'], 'accepted'],
    [['right', 'note'], 'accepted'],
    [['right', 'wrong'], 'needsWork'],
    [['wrong', 'missing'], 'notReady'],
  ] as const)('of %j is %s', (states, verdict) => expect(verdictOf(found(...states))).toBe(verdict));
});

describe('grading', () => {
  const attempt = sampleAttempt('F3', 'woven');

  it('is pure: the same attempt gets the same mark, and is not changed', () => {
    const text = JSON.stringify(attempt);
    expect(gradeLesson(lesson, attempt)).toEqual(gradeLesson(lesson, JSON.parse(text) as Attempt));
    expect(JSON.stringify(attempt)).toBe(text);
  });

  it.each(['F1', 'F2', 'F3', 'F4', 'F5'])(
    'accepts all steps of the sample on figure %s, for both fabrics',
    (figure) => {
      for (const fabric of ['knit', 'woven'] as const) {
        const marks = gradeLesson(lesson, sampleAttempt(figure, fabric));
        expect(marks.filter((mark) => mark.verdict !== 'accepted')).toEqual([]);
      }
    },
  );

  it('accepts nothing of an attempt without commands', () => {
    for (const mark of gradeLesson(lesson, { ...attempt, commands: [] }))
      expect(mark.verdict).toBe('notReady');
  });

  it('marks a step from the learner’s own work when an earlier step needs work', () => {
    const own = edited('walk-the-seams', (c) => c);
    const commands = own.commands.map((c) => (c.do === 'read' ? { ...c, value: c.value * 3 } : c));
    const marks = gradeLesson(lesson, { ...own, commands });
    expect(marks.map((mark) => mark.verdict)).toEqual(['needsWork', ...Array<string>(12).fill('accepted')]);
  });

  it('throws on a rule with a check that does not exist, or without a number it needs: a fault of the lesson', () => {
    const context = contextOf('connectors', attempt);
    expect(() => gradeStep({ id: 'x', checks: [{ check: 'no-such' }] }, context)).toThrow(RangeError);
    expect(() => gradeStep({ id: 'x', checks: [{ check: 'connectors' }] }, context)).toThrow(RangeError);
    expect(() => gradeOne(lesson, 'no-such-step', attempt)).toThrow(RangeError);
  });
});

/** Every closed outline starts `k` edges later. */
function rolled(work: Work, k: number): Work {
  const roll = <T>(list: readonly T[]): T[] => list.map((_, i) => list[(i + k) % list.length]!);
  const piece = (p: Piece): Piece => ({
    ...p,
    parts: p.parts.map((part) => ({ ...part, edges: roll(part.edges) })),
    ...(p.seam && { seam: roll(p.seam) }),
  });
  return { ...work, pieces: work.pieces.map(piece), ...(work.opened && { opened: piece(work.opened) }) };
}

/** All that lies on the table, moved and turned as one sheet: every point by the same rigid motion. */
function carried<T>(thing: T, motion: Isometry): T {
  if (Array.isArray(thing)) return thing.map((one: unknown) => carried(one, motion)) as T;
  if (typeof thing !== 'object' || thing === null) return thing;
  const { x, y, e, f } = thing as { x?: unknown; y?: unknown; e?: unknown; f?: unknown };
  if (typeof x === 'number' && typeof y === 'number') return applyTo(motion, { x, y }) as T;
  // How a part has moved since it was cut free: now by this motion as well.
  if (typeof e === 'number' && typeof f === 'number') return compose(motion, thing as never) as T;
  return Object.fromEntries(Object.entries(thing).map(([key, value]) => [key, carried(value, motion)])) as T;
}

/** Ids that only say where most is off: of places that are off alike any one may be named. */
const PLACES = ['landmark', 'from', 'to'];

/** What the findings say, in any order: the outline gives the order, and nothing else may follow from it. */
function said(findings: readonly Finding[]): { readonly words: string[]; readonly numbers: number[] } {
  const told = findings.map(({ where: _where, measured, expected, cause, about = {}, ...rest }) => {
    const names = Object.entries(about).filter(([key]) => !PLACES.includes(key));
    return {
      words: JSON.stringify({ ...rest, cause: cause?.code, about: Object.fromEntries(names) }),
      numbers: [measured ?? 0, ...[expected ?? 0].flat(), cause?.amount ?? 0],
    };
  });
  told.sort((p, q) => (p.words < q.words ? -1 : p.words > q.words ? 1 : p.numbers[0]! - q.numbers[0]!));
  return { words: told.map((one) => one.words), numbers: told.flatMap((one) => one.numbers) };
}

function expectAlike(findings: readonly Finding[], others: readonly Finding[]): void {
  const [one, other] = [said(findings), said(others)];
  expect(other.words).toEqual(one.words);
  const off = one.numbers.map((value, i) => Math.abs(value - other.numbers[i]!));
  expect(Math.max(0, ...off)).toBeLessThan(1e-6);
}

describe('a grade does not change when the work lies elsewhere or its outlines start elsewhere', () => {
  const cases = stepFolders(lesson.id).flatMap((folder, i) => {
    const place = join(LESSONS, lesson.id, folder, 'attempts');
    const step = lesson.steps[i]!.id as StepId;
    return readdirSync(place)
      .filter((name) => name.endsWith('.attempt.json') && !name.startsWith('start'))
      .map((name) => ({ step, name, file: join(place, name) }));
  });

  it.each(cases)('$step: $name', ({ step, file }) => {
    const context = contextOf(step, JSON.parse(readFileSync(file, 'utf8')) as Attempt);
    const mark = gradeContext(step, context);
    for (const k of [1, 3]) {
      const other = gradeContext(step, {
        ...context,
        before: rolled(context.before, k),
        after: rolled(context.after, k),
      });
      expect(other.verdict).toBe(mark.verdict);
      expectAlike(mark.findings, other.findings);
    }
  });

  it.each(cases)('$step: $name, moved and turned', ({ step, file }) => {
    const context = contextOf(step, JSON.parse(readFileSync(file, 'utf8')) as Attempt);
    const mark = gradeContext(step, context);
    const place = fc.integer({ min: -900, max: 900 });
    const degrees = fc.integer({ min: -180, max: 180 });
    fc.assert(
      fc.property(place, place, degrees, (x, y, turn) => {
        const motion = rotationByAngle({ x, y }, (turn * Math.PI) / 180);
        const [before, after] = [carried(context.before, motion), carried(context.after, motion)];
        const other = gradeContext(step, { ...context, before, after });
        expect(other.verdict).toBe(mark.verdict);
        expectAlike(mark.findings, other.findings);
      }),
      { numRuns: 5 },
    );
  });
});
