import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { LESSONS, lessonIds, loadLesson, stepFolders } from '../../src/cli/load-lessons.ts';
import { onBodies, onBody, onOwnBody, otherFigures, type OnBody } from '../../src/lib/lessons/bodies.ts';
import { drillLesson } from '../../src/lib/lessons/drills/lesson.ts';
import { stepNumber } from '../../src/lib/lessons/drills/steps.ts';
import { newest } from '../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import type { Lesson } from '../../src/lib/lessons/types.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import { chainLength } from '../../src/lib/geometry/chain.ts';
import type { Point } from '../../src/lib/geometry/types.ts';
import { findEdge, landmark } from '../../src/lib/pattern/outline.ts';
import { parseAttempt } from '../../src/lib/recipe/parse.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { nothingToShow, notLookedAt, outcomeText, summary } from '../../src/lib/strings/bodies.ts';
import { drillWords } from '../../src/lib/strings/drills.ts';
import { courseAttempt, pass } from '../golden/course/case.ts';

const all = (lesson: Lesson, attempt: Attempt): readonly OnBody[] => [
  ...onBodies(lesson, attempt, onOwnBody(lesson, attempt)),
];
const golden = (lesson: string, step: string, name: string): Attempt => {
  const folder = stepFolders(lesson).find((one) => one.endsWith(step))!;
  const parsed = parseAttempt(
    readFileSync(join(LESSONS, lesson, folder, 'attempts', `${name}.attempt.json`), 'utf8'),
  );
  if ('problems' in parsed) throw new Error(`${lesson} ${name}`);
  return parsed.ok;
};
const passes = lessonIds().flatMap((id) =>
  stepFolders(id).flatMap((folder) =>
    readdirSync(join(LESSONS, id, folder, 'attempts'))
      .filter((name) => name.startsWith('pass-'))
      .map((name) => ({ id, folder, name: name.replace('.attempt.json', '') })),
  ),
);
const byHandOf = (commands: readonly Command[]): boolean =>
  !commands.some((c) => (c.do === 'turn' || c.do === 'pivot') && 'angle' in c.by);

const attemptOfDrill = (lesson: Lesson, commands: readonly Command[]): Attempt => ({
  format: 'pin-and-pivot/recipe',
  version: 1,
  lesson: { id: lesson.id, content: lesson.content },
  block: { figure: lesson.figure, form: lesson.form! },
  fabric: 'woven',
  seed: 0,
  commands,
});

/** The bust point and the outer ends of a dart's two legs on a demo figure's block, mm. */
function dartOn(figure: string, form: 'waist' | 'two-dart', dart = 'right/waist-dart') {
  const front = startWork({ figure, form }).opened!;
  const bust = landmark(front, 'right/bust-point')!;
  const off = ({ x, y }: Point): number => Math.hypot(x - bust.x, y - bust.y);
  const names = dart === 'right/dart' ? ['upper', 'lower'] : ['side', 'centre'];
  const ends = names.map((leg) =>
    findEdge(front, `${dart}-${leg}`)!
      .chain.flatMap((s) => [s.a, s.d])
      .reduce((best, p) => (off(p) > off(best) ? p : best)),
  ) as [Point, Point];
  return { bust, ends };
}

describe('a construction on the other bodies', () => {
  it('is looked at on every demo figure but the own one', () => {
    expect(otherFigures({ figure: 'F2' })).toEqual(['F1', 'F3', 'F4', 'F5']);
    expect(otherFigures({ figure: undefined })).toEqual(['F1', 'F2', 'F3', 'F4', 'F5']);
  });

  it('holds on all of them, or but for a place, in every golden attempt that is made by legs and anchors', () => {
    const made = passes.filter(({ id, folder, name }) =>
      byHandOf(golden(id, folder.slice(3), name).commands),
    );
    // Of some 190; should the goldens no longer be found, nothing would be looked at.
    expect(made.length).toBeGreaterThan(100);
    for (const { id, folder, name } of made)
      for (const one of all(loadLesson(id)!, golden(id, folder.slice(3), name)))
        expect([`${id} ${name} ${one.figure}`, one.outcome]).toEqual([
          `${id} ${name} ${one.figure}`,
          expect.stringMatching(/^(holds|place)$/),
        ]);
  }, 120_000);

  it('fails on the two large figures in every golden attempt by a typed angle, and says where', () => {
    const typed = passes.filter(({ id, folder, name }) => {
      const attempt = golden(id, folder.slice(3), name);
      const lesson = loadLesson(id)!;
      // Not those that left an earlier step wrong on the own body.
      const { marks } = onOwnBody(lesson, attempt);
      const turns = attempt.commands.filter((c) => !byHandOf([c]));
      return turns.length > 0 && turns.every(({ step }) => marks.has(step!));
    });
    expect(typed.length).toBeGreaterThan(8);
    for (const { id, folder, name } of typed) {
      const found = all(loadLesson(id)!, golden(id, folder.slice(3), name));
      for (const one of found.filter(({ figure }) => figure === 'F4' || figure === 'F5')) {
        expect([id, name, one.figure, one.outcome]).toEqual([id, name, one.figure, 'fails']);
        expect(one.findings[0]!.code).toMatch(/^dart-(moved|closed)\/(residual|opening)$/);
        expect(one.findings[0]!.where).toBeDefined();
        expect(one.typed).toBeDefined();
      }
    }
  }, 120_000);

  it('a typed angle leaves the gap on each body that the arithmetic of its dart gives', () => {
    const lesson = loadLesson('waist-to-side')!;
    const attempt = golden('waist-to-side', 'move', 'pass-typed-angle');
    const turn = attempt.commands.find((c) => c.do === 'turn')!;
    const angle = Math.abs('angle' in turn.by ? turn.by.angle : NaN);
    const own = onOwnBody(lesson, attempt);
    for (const figure of ['F1', 'F4', 'F5'] as const) {
      // The chord over what is left of the dart's angle, at the leg's length (derived).
      const { bust, ends } = dartOn(figure, 'waist');
      const [one, two] = ends.map((p) => Math.atan2(p.y - bust.y, p.x - bust.x)) as [number, number];
      const length = Math.hypot(ends[0].x - bust.x, ends[0].y - bust.y);
      const dart = Math.abs(one - two);
      // B / 4 - 2.5 degrees for a bust of B cm (trade notes).
      expect((dart * 180) / Math.PI).toBeCloseTo(FIGURES[figure].bust / 40 - 2.5, 9);
      const gap = 2 * length * Math.sin((dart - angle) / 2);
      const found = onBody(lesson, attempt, own, figure);
      const residual = found.findings.find(({ code }) => code === 'dart-moved/residual');
      expect(residual!.measured).toBeCloseTo(gap, 6);
      // A typed angle that is too small leaves a gap, one that is too large an overlap: signed.
      expect(Math.sign(residual!.measured!)).toBe(figure === 'F1' ? -1 : 1);
    }
  });

  it('leaves readings out: they are numbers of one body', () => {
    const lesson = loadLesson('reading-the-block')!;
    const own = golden('reading-the-block', 'read', 'pass-to-the-point');
    expect(onOwnBody(lesson, own).readings).toBe(own.commands.filter((c) => c.do === 'read').length);
    expect(onOwnBody(lesson, own).readings).toBeGreaterThan(0);
    expect(all(lesson, own).map(({ outcome }) => outcome)).toEqual(['holds', 'holds', 'holds', 'holds']);
  });

  it('says where only readings are asked for, or accepted, what is not tried on other bodies', () => {
    const drill = newest({
      exercise: 'block',
      seed: 7,
      fabric: 'woven',
      band: 'usual',
      hints: 0,
      step: stepNumber('block', 'read'),
    });
    const reading = drillLesson(variantOf(drill), drillWords('mm'));
    const worked = attemptOfDrill(reading, workedLesson(reading, 'woven').commands);
    const read = onOwnBody(reading, worked);
    expect([read.marks.size, read.toRead, read.read]).toEqual([0, 1, 1]);
    expect(nothingToShow(read, reading.steps.length)).toMatch(/^Only readings are asked for/);

    const { step: _, ...whole } = drill;
    const block = drillLesson(variantOf(whole), drillWords('mm'));
    const commands = workedLesson(block, 'woven').commands.filter(({ do: name }) => name === 'read');
    const some = onOwnBody(block, attemptOfDrill(block, commands));
    expect([some.marks.size, some.toRead, some.read]).toEqual([0, 1, 1]);
    expect(nothingToShow(some, block.steps.length)).toMatch(/only readings are accepted so far/);

    const none = onOwnBody(block, attemptOfDrill(block, []));
    expect([none.marks.size, none.toRead, none.read]).toEqual([0, 1, 0]);
    expect(nothingToShow(none, block.steps.length)).toMatch(/^No step is accepted yet/);
  });

  it('takes the edge of a band, and a place in mm on a line, for a place to be marked anew', () => {
    const lesson = loadLesson('slanted-seam')!;
    const near = all(lesson, golden('slanted-seam', 'style-line', 'pass-as-near-as-allowed'));
    expect(near.filter(({ outcome }) => outcome === 'place').map(({ figure }) => figure)).toEqual([
      'F3',
      'F4',
      'F5',
    ]);
    expect(near.at(-1)!.findings.map(({ code }) => code)).toEqual(['line-passes/distance']);
  });

  it('a tip a pencil line off the bust point is so on every body', () => {
    const lesson = loadLesson('waist-to-side')!;
    const attempt = courseAttempt(
      lesson,
      pass('working-dart', 'edge', {
        edit: () => [
          {
            do: 'extend-dart',
            dart: 'right/waist-dart',
            to: { landmark: 'right/bust-point', dx: 1.5999 },
          },
        ],
      }),
    );
    expect(all(lesson, attempt).every(({ outcome }) => outcome === 'holds')).toBe(true);
  });

  it('takes an error within the band that grew with the edge for a matter of the band', () => {
    const drill = { exercise: 'slash', seed: 3, fabric: 'woven', band: 'usual', hints: 0 } as const;
    const variant = variantOf(drill);
    const lesson = drillLesson(variant, drillWords('mm'));
    const [goal] = variant.goals;
    // 3.1 mm beside the place, of 3.2 that are allowed: on an edge that is longer by a part the same share is more than that.
    const beside = 3.1 / (goal!.mm / goal!.fraction);
    const commands = workedLesson(lesson, 'woven').commands.map((c) =>
      c.do === 'draw-slash' && 'on' in c.from ? { ...c, from: { ...c.from, at: c.from.at + beside } } : c,
    );
    const outcomes = all(lesson, attemptOfDrill(lesson, commands));
    const length = (figure: string): number =>
      chainLength(findEdge(startWork({ figure, form: variant.form }).opened!, goal!.edge)!.chain);
    for (const { figure, outcome } of outcomes)
      expect([figure, outcome]).toEqual([figure, beside * length(figure) > 3.2 ? 'place' : 'holds']);
    expect(outcomes.map(({ outcome }) => outcome)).toContain('place');
  });

  it('takes a connector drawn to the nearest place as that on every body, and as a share one that was drawn to a place of its own', () => {
    // The foot of the shortest way from a point to a line is another share of the line on another body (derived).
    const step = stepNumber('line', 'connector');
    const drill = newest({ exercise: 'line', seed: 4711, fabric: 'woven', band: 'usual', hints: 0, step });
    const lesson = drillLesson(variantOf(drill), drillWords('mm'));
    const { commands } = workedLesson(lesson, 'woven');
    expect(commands.filter((c) => c.do === 'connect').map((c) => c.square)).toEqual([true]);
    const outcomes = (of: readonly Command[]) =>
      all(lesson, attemptOfDrill(lesson, of)).map(({ outcome }) => outcome);
    expect(new Set(outcomes(commands))).toEqual(new Set(['holds']));
    const shared = commands.map((c) => (c.do === 'connect' ? { ...c, square: false } : c));
    expect(outcomes(shared)).toContain('place');
  });

  it('tells the command that cannot be followed on another body, by its place in the own list', () => {
    const { bust, ends } = dartOn('F1', 'two-dart', 'right/dart');
    const room = Math.hypot((ends[0].x + ends[1].x) / 2 - bust.x, (ends[0].y + ends[1].y) / 2 - bust.y);
    // A dart of F5 that is backed off by more than that of F1 is deep, in a lesson that lets it.
    const course = loadLesson('finish-a-dart')!;
    const [first] = course.steps;
    const checks = first!.checks.map((check) => ({ ...check, numbers: { ...check.numbers, 'most-1': 500 } }));
    const lesson: Lesson = { ...course, figure: 'F5', steps: [{ ...first!, checks }] };
    const worked = courseAttempt(lesson, pass(first!.id, 'x')).commands;
    const commands: readonly Command[] = [
      { do: 'read', what: 'intake', value: 1, step: first!.id },
      ...worked.map((c) => (c.do === 'back-off' && c.dart === 'right' ? { ...c, by: room + 1 } : c)),
    ];
    const attempt = { ...courseAttempt(lesson, pass(first!.id, 'x')), commands };
    expect([...onOwnBody(lesson, attempt).marks.keys()]).toEqual([first!.id]);
    const [f1] = all(lesson, attempt);
    expect(f1).toMatchObject({ figure: 'F1', outcome: 'refused', step: first!.id });
    expect(f1!.refused!.refused.code).toBe('back-off-too-far');
    expect(commands[f1!.refused!.index]).toEqual(f1!.refused!.command);
  });

  it('looks only at steps that are accepted on the own body', () => {
    const lesson = loadLesson('waist-to-side')!;
    const whole = courseAttempt(lesson, pass('prove', 'whole'));
    const half = {
      ...whole,
      commands: whole.commands.map((c) => (c.do === 'turn' ? { ...c, by: { share: 0.5 } } : c)),
    };
    expect(onOwnBody(lesson, half).marks.has('move')).toBe(false);
    const { left } = onOwnBody(lesson, half);
    expect(left).toContain('move');
    // What was not looked at is not said to hold.
    expect(notLookedAt(left)).toMatch(/^Not looked at: “move”/);
    const holding = all(lesson, half).filter(({ outcome }) => outcome === 'holds');
    expect(holding.length).toBeGreaterThan(0);
    expect(summary(holding, left)).toMatch(/as far as it was looked at\. Not looked at: “move”/);
    expect(outcomeText('holds', left)).toBe('Holds, as far as looked at');
    expect(outcomeText('fails', left)).toBe('Fails here');
    expect(all(lesson, half).map(({ step }) => step)).not.toContain('move');
  });

  it('says of all where nothing was left out', () => {
    const lesson = loadLesson('waist-to-side')!;
    const whole = courseAttempt(lesson, pass('prove', 'whole'));
    const { left } = onOwnBody(lesson, whole);
    expect(left).toEqual([]);
    expect(summary(all(lesson, whole), left)).toBe('It holds on all bodies.');
    expect(outcomeText('holds', left)).toBe('Holds');
    expect(notLookedAt(left)).toBeUndefined();
  });

  it('is the same on the own body as the attempt itself, to the last bit', () => {
    const lesson = loadLesson('waist-to-side')!;
    const attempt = courseAttempt(lesson, pass('prove', 'whole'));
    expect(onBody(lesson, attempt, onOwnBody(lesson, attempt), lesson.figure).work).toEqual(
      replay(attempt).work,
    );
  });

  it('holds for drills of every kind, worked by legs; places in mm along an edge go along as a share', () => {
    for (const exercise of ['slash', 'pivot', 'split', 'join'] as const)
      for (const seed of [1, 2, 3]) {
        const drill = { exercise, seed, fabric: 'woven', band: 'strict', hints: 0 } as const;
        const lesson = drillLesson(variantOf(drill), drillWords('mm'));
        const attempt = attemptOfDrill(lesson, workedLesson(lesson, 'woven').commands);
        const found = all(lesson, attempt);
        expect(found).toHaveLength(Object.keys(FIGURES).length - 1);
        expect(found.map(({ outcome }) => outcome)).toEqual(found.map(() => 'holds'));
      }
  });
});
