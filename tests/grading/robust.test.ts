import fc from 'fast-check';
import { expect, it } from 'vitest';
import { replayDocument } from '../../src/lib/recipe/document.ts';
import { gradeLesson } from '../../src/lib/grading/grade.ts';
import { checkAttempt } from '../../src/lib/recipe/parse.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { sentence } from '../../src/lib/strings/sentence.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { lesson } from './marks.ts';
import { real } from '../support/real.ts';

const samples = [
  sampleAttempt('F2', 'knit'),
  sampleAttempt('F4', 'woven', { turn: 'rest' }),
  sampleAttempt('F1', 'woven', { separateFirst: true }),
];

/** Ways in which a list of commands comes out of order; each takes a number from 0 to 1 that says where. */
type Harm = (commands: readonly Command[], where: number, how: number) => readonly Command[];
const at = (commands: readonly Command[], where: number) =>
  Math.min(commands.length - 1, Math.floor(where * commands.length));
const HARMS: readonly Harm[] = [
  (c, w) => c.filter((_, i) => i !== at(c, w)),
  (c, w, h) => [...c.slice(0, at(c, h)), c[at(c, w)]!, ...c.slice(at(c, h))],
  (c, w, h) => c.map((one, i) => (i === at(c, w) ? ({ ...one, step: c[at(c, h)]!.step! } as Command) : one)),
  (c, w, h) => c.map((one, i) => (i === at(c, w) ? (scaled(one, h * 4 - 2) as Command) : one)),
  (c, w, h) => c.map((one, i) => (i === at(c, w) ? (scaled(one, h < 0.5 ? 0 : 1e3) as Command) : one)),
];

/** All numbers of a command times a factor. */
function scaled(value: unknown, factor: number): unknown {
  if (typeof value === 'number') return value * factor;
  if (Array.isArray(value)) return value.map((one) => scaled(one, factor));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, scaled(one, factor)]));
}

it('replays and marks any attempt that can be read, however odd, without throwing, and finds words for it', () => {
  const unit = real(0, 0.999999);
  const harm = fc.tuple(fc.constantFrom(...HARMS), unit, unit);
  let marked = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...samples),
      fc.array(harm, { minLength: 1, maxLength: 6 }),
      (sample, harms) => {
        const commands = harms.reduce<readonly Command[]>(
          (c, [how, w, h]) => (c.length > 0 ? how(c, w, h) : c),
          sample.commands,
        );
        const parsed = checkAttempt(JSON.parse(JSON.stringify({ ...sample, commands })) as unknown);
        fc.pre('ok' in parsed);
        const attempt = (parsed as { ok: Attempt }).ok;
        const marks = gradeLesson(lesson, attempt);
        marked++;
        const findings = marks.flatMap((mark) => mark.findings);
        expect(findings.map((finding) => sentence(finding, 'mm')).join('\n')).not.toMatch(
          /undefined|NaN|[{}]/,
        );
        // What is written to a file has to come back: no Infinity, no NaN.
        expect(JSON.parse(JSON.stringify(findings))).toEqual(findings);
        const strange: unknown[] = [];
        JSON.stringify(replayDocument(attempt), (key, value: unknown) => {
          if (typeof value === 'number' && !Number.isFinite(value)) strange.push([key, value]);
          return value;
        });
        expect(strange).toEqual([]);
      },
    ),
    { numRuns: 150 },
  );
  expect(marked).toBeGreaterThan(50);
}, 60_000);
