import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { LESSONS, lessonIds, loadLesson, stepFolders } from '../../src/cli/load-lessons.ts';
import { firstDivergence, inOrder, lookForOrigin, type Origin } from '../../src/lib/lessons/divergence.ts';
import { offBy } from '../../src/lib/lessons/stemming.ts';
import type { Lesson } from '../../src/lib/lessons/types.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { drillLesson } from '../../src/lib/lessons/drills/lesson.ts';
import { EXERCISES, newest, type Drill } from '../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { drillWords } from '../../src/lib/strings/drills.ts';
import { workedLesson, workedStep } from '../../src/lib/lessons/worked/index.ts';
import { replayByStep } from '../../src/lib/recipe/replay.ts';
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

function originOf(of: Lesson, attempt: Attempt): Origin {
  const search = lookForOrigin(of, attempt);
  for (;;) {
    const { done, value } = search.next();
    if (done) return value;
  }
}

describe('the first divergence', () => {
  it('is nowhere in a right attempt, nor in one that only stops too early', () => {
    const whole = attemptOf((c) => c);
    expect(originOf(lesson, whole)).toEqual({ kind: 'right' });
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
    // 16.6 mm beside the pin, turned by 18.5°: the parts come apart by the chord 2 · 16.6 · sin(9.25°) = 5.3 mm (derived).
    const chord = 2 * Math.sqrt(14 * 14 + 9 * 9) * Math.sin((18.5 / 2) * (Math.PI / 180));
    expect(drift!.off).toBeCloseTo(chord, 0);
    expect(drift!.amount).toBeCloseTo(drift!.off!, 9);
    expect(drift!.share).toBeCloseTo(1, 9);
  });

  it('is not a turn that is merely too small: it can still be gone on with', () => {
    const attempt = attemptOf(turned((c) => ({ ...c, by: { share: 0.5 } })));
    expect(originOf(lesson, attempt)).toEqual({ kind: 'goes-on', shows: 'move' });
  });

  it('is not what was drawn over again, but what went wrong after it', () => {
    const attempt = attemptOf((all) =>
      all.flatMap((c): Command[] => {
        if (c.do === 'draw-slash') return [{ ...c, from: { on: 'right/shoulder', at: 0.5 } }, c];
        return c.do === 'cut-slash' ? [{ ...c, past: 3 }] : [c];
      }),
    );
    expect(firstDivergence(lesson, attempt)?.command.do).toBe('cut-slash');
  });
  it('is not a wrong slash that was drawn over wrongly again: the one that stands is, and its fault stems from there', () => {
    const beside = (at: number) => ({ on: 'right/shoulder', at });
    const attempt = attemptOf((all) =>
      all.flatMap((c): Command[] =>
        c.do === 'draw-slash'
          ? [
              { ...c, from: beside(0.3) },
              { ...c, from: beside(0.7) },
            ]
          : [c],
      ),
    );
    const first = attempt.commands.findIndex((c) => c.do === 'draw-slash');
    const found = firstDivergence(lesson, attempt);
    expect(found?.index).toBe(first + 1);
    expect(found?.stemming.map(({ share }) => share)).toContain(1);
  });

  it('is not a notch that was taken away again, but the wrong one that stayed', () => {
    const of = loadLesson('slanted-seam')!;
    const path = 'slanted-seam/04-notches/attempts/fail-notches-placed-after-foot-too-far.attempt.json';
    const whole = inOrder(of, JSON.parse(readFileSync(join(LESSONS, path), 'utf8')) as Attempt);
    const known = firstDivergence(of, whole)!.index;
    const wrong = whole.commands[known] as Extract<Command, { do: 'notch' }>;
    expect(wrong.do).toBe('notch');
    const commands: readonly Command[] = [
      ...whole.commands.slice(0, known),
      { ...wrong, id: 'once-more', at: 0.02 },
      wrong,
      { do: 'remove-notch', id: 'once-more', ...(wrong.step !== undefined && { step: wrong.step }) },
      ...whole.commands.slice(known + 1),
    ];
    expect(firstDivergence(of, { ...whole, commands })?.index).toBe(known + 1);
  });

  it('lays to each of two mistakes only its own', () => {
    const of = loadLesson('proof-of-fit')!;
    const whole = courseAttempt(of, pass('working-darts', 'whole'));
    const bad = whole.commands.map((c): Command => {
      if (c.do !== 'extend-dart' || !('landmark' in c.to)) return c;
      return { ...c, to: { ...c.to, dx: 8 } };
    });
    const found = firstDivergence(of, { ...whole, commands: bad });
    expect(found?.index).toBe(0);
    // Both tips were put 8 mm beside; only the one is owed to the first command.
    expect(found?.stemming.map(({ off }) => off?.toFixed(3))).toEqual(['8.000', '8.000']);
    expect(found?.stemming.map(({ amount }) => amount?.toFixed(3))).toEqual(['8.000', '0.000']);
    expect(found?.stemming.map(({ share }) => share.toFixed(3))).toEqual(['1.000', '0.000']);
  });

  it('finds a step that can no longer be worked because of what was done before it', () => {
    const of = loadLesson('slanted-seam')!;
    const path = 'slanted-seam/11-allowances/attempts/fail-allowances-before-truing.attempt.json';
    const attempt = JSON.parse(readFileSync(join(LESSONS, path), 'utf8')) as Attempt;
    const found = firstDivergence(of, attempt);
    // The leftover was never treated; with the first allowance it was too late for it.
    expect(found?.index).toBe(inOrder(of, attempt).commands.findIndex((c) => c.do === 'allow'));
  });
});

describe('in drills', () => {
  const ofKind = (exercise: Drill['exercise'], seed: number) => {
    const drill: Drill = { exercise, seed, fabric: 'woven', band: 'usual', hints: 0 };
    const of = drillLesson(variantOf(newest(drill)), drillWords('mm'));
    const { commands } = workedLesson(of, 'woven');
    const made = (edit: (command: Command) => Command): Attempt => ({
      format: 'pin-and-pivot/recipe',
      version: 1,
      lesson: { id: of.id, content: of.content },
      block: blockOf(of),
      fabric: 'woven',
      seed: 0,
      commands: commands.map(edit),
    });
    return { of, commands, made };
  };

  it.each(EXERCISES.map((exercise) => [exercise]))(
    '%s: a tip or a pin that slipped is found',
    { timeout: 60_000 },
    (exercise) => {
      for (let seed = 1; seed <= 12; seed++) {
        const { of, commands, made } = ofKind(exercise, seed * 7919);
        expect(
          originOf(
            of,
            made((c) => c),
          ),
          `${seed}`,
        ).toEqual({ kind: 'right' });
        const beside = { landmark: 'right/bust-point', dx: 9, dy: 9 };
        const tip = commands.findIndex((c) => c.do === 'extend-dart');
        if (tip >= 0) {
          const wrong = made((c) => (c === commands[tip] ? ({ ...c, to: beside } as Command) : c));
          expect(firstDivergence(of, wrong)?.index, `${seed}: tip`).toBe(tip);
        }
        // The last one: a first share may be so small that a slipped pin does no harm.
        const pin = commands.findLastIndex((c) => c.do === 'turn' || c.do === 'pivot');
        if (pin >= 0) {
          const wrong = made((c) => (c === commands[pin] ? ({ ...c, about: beside } as Command) : c));
          expect(firstDivergence(of, wrong)?.index, `${seed}: pin`).toBe(pin);
        }
      }
    },
  );

  it('a slash that was moved to another wrong place is found where it stands', () => {
    const { of, commands, made } = ofKind('slash', 133_117);
    const drawn = commands.findIndex((c) => c.do === 'draw-slash');
    const moved =
      (by: number) =>
      (c: Command): Command =>
        c.do === 'draw-slash' && 'on' in c.from ? { ...c, from: { ...c.from, at: c.from.at + by } } : c;
    const whole = made((c) => c);
    const twice = [
      ...whole.commands.slice(0, drawn),
      ...[0.2, 0.1].map((by) => moved(by)(commands[drawn]!)),
      ...whole.commands.slice(drawn + 1),
    ];
    const found = firstDivergence(of, { ...whole, commands: twice });
    expect(found?.index).toBe(drawn + 1);
    expect(found?.stemming.find(({ code }) => code === 'slash-drawn/place')?.share).toBeCloseTo(1, 6);
  });
});

describe('how far a finding is off', () => {
  const finding = { check: 'a', code: 'a/b', state: 'wrong', unit: 'mm' } as const;
  it('is signed, from a value or from the nearer end of a range', () => {
    expect(offBy({ ...finding, measured: 3, expected: 5 })).toBe(-2);
    expect(offBy({ ...finding, measured: 9, expected: [2, 5] })).toBe(4);
    expect(offBy({ ...finding, measured: 1, expected: [2, 5] })).toBe(-1);
    expect(offBy({ ...finding, measured: 3, expected: [2, 5] })).toBe(0);
    expect(offBy(finding)).toBeUndefined();
  });
});

/*
 * The known wrong command: what a fail attempt has and neither the worked solution nor any attempt that passes (derived from the golden
 * attempts alone, by comparing texts).
 */
const plain = (command: Command): string =>
  JSON.stringify({ ...command, step: undefined }, (_, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );

/** Only something is left to do, or another command than the first odd one is to blame; each with why. */
const ELSEWHERE: Readonly<Record<string, number>> = {
  // The two lines lie too close together: either may be moved, so with the first of them nothing is lost yet.
  'radiating-neck-darts fail-slashes-laid-spacing-two-too-close': 3,
  // One point alone may stand anywhere; with the second one they are alike.
  'clustered-darts fail-dart-finished-graduated-all-alike': 11,
  // The third of the four notches stands elsewhere than in any other attempt, but within its 30 to 50 mm; the fourth does not.
  'slanted-seam fail-notches-placed-after-foot-too-far': 13,
  // Six notches at most: with the fifth at the first bust point there is no room for the two at the other.
  'slanted-seam fail-notches-placed-count': 14,
  // The first four do; the seventh is one too many.
  'slanted-seam fail-notches-placed-symmetric': 16,
  // A width within its tolerance may stand; the other piece's, which is not like it, is one too many.
  'slanted-seam fail-allowances-partners-style-line': 56,
  // A name is wrong only once another piece has it too.
  'slanted-seam fail-labels-name-twice-the-same': 79,
};
const GOES_ON =
  /half-way|not-far-enough|forgotten|half-closed|gap-left|half-of-what-was-left|one-side-only|past-the-limit-of-a-woven/;

// The main lesson has some 180 attempts.
describe.each(lessonIds().map((name) => [name]))('%s', { timeout: 60_000 }, (name) => {
  const of = loadLesson(name)!;
  const ids = of.steps.map(({ id }) => id);
  const files = stepFolders(name).flatMap((folder) => {
    const attempts = join(LESSONS, name, folder, 'attempts');
    return readdirSync(attempts)
      .filter((file) => file.endsWith('.attempt.json'))
      .map((file) => ({
        file: file.replace('.attempt.json', ''),
        attempt: inOrder(of, JSON.parse(readFileSync(join(attempts, file), 'utf8')) as Attempt),
      }));
  });
  const passes = files.filter(({ file }) => file.startsWith('pass-'));
  const good = new Set(passes.flatMap(({ attempt }) => attempt.commands.map(plain)));

  function worked(attempt: Attempt): readonly Command[] {
    return ids.reduce<readonly Command[]>((commands, id, i) => {
      const { before } = replayByStep({ ...attempt, commands }, ids).get(id)!;
      return [...commands, ...workedStep(of.steps[i]!, before, attempt.fabric)];
    }, []);
  }

  it('no attempt that passes has one', () => {
    for (const { file, attempt } of passes)
      // Two of the main lesson pass a later step with what an earlier one was told off for.
      if (!/tip-elsewhere-still-nearest|with-a-gap-from-before/.test(file))
        expect(originOf(of, attempt), file).toEqual({ kind: 'right' });
  });

  it('in each that fails it is the command whose fault is known', () => {
    for (const { file, attempt } of files.filter((one) => one.file.startsWith('fail-'))) {
      const found = originOf(of, attempt);
      if (GOES_ON.test(file) && found.kind !== 'began') continue;
      expect(found.kind, file).toBe('began');
      if (found.kind !== 'began') continue;
      const fine = new Set([...good, ...worked(attempt).map(plain)]);
      const odd = attempt.commands.findIndex((command) => !fine.has(plain(command)));
      const known = ELSEWHERE[`${name} ${file}`] ?? odd;
      if (known >= 0) expect(found.index, file).toBe(known);
    }
  });
});
