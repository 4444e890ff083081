import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { compareWithPaper } from '../../src/lib/grading/paper.ts';
import { measurable } from '../../src/lib/grading/paper-items.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { drillLesson } from '../../src/lib/lessons/drills/lesson.ts';
import { EXERCISES } from '../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import type { Lesson } from '../../src/lib/lessons/types.ts';
import { paperTables } from '../../src/lib/lessons/worked/for-paper.ts';
import { workedFrom, workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { replayByStep } from '../../src/lib/recipe/replay.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Attempt, Command, Fabric } from '../../src/lib/recipe/types.ts';
import { drillWords } from '../../src/lib/strings/drills.ts';
import { paperLabel } from '../../src/lib/strings/paper.ts';

const drills = EXERCISES.flatMap((exercise) =>
  [3, 4, 5].map((seed): readonly [string, Lesson] => [
    `${exercise} ${seed}`,
    drillLesson(variantOf({ exercise, seed, fabric: 'woven', band: 'usual', hints: 0 }), drillWords('mm')),
  ]),
);
const all: readonly (readonly [string, Lesson])[] = [
  ...lessonIds().map((id) => [id, loadLesson(id)!] as const),
  ...drills,
];

const NONE = new Map<string, never>();
const at = (lesson: Lesson, step: string, fabric: Fabric) => {
  const { work: start } = workedFrom(startWork(blockOf(lesson)), lesson.given ?? [], fabric);
  const { before, worked } = paperTables(lesson, NONE, step, start, fabric);
  return { before, worked, items: measurable(before, worked, fabric) };
};
const fresh = (id: string, step: string, fabric: Fabric = 'woven') =>
  at(loadLesson(id)!, step, fabric)
    .items.filter((item) => item.fresh)
    .map(({ what, about }) => `${what} ${about}`);

describe.each(all)('what can be measured on the paper of %s', (_, lesson) => {
  const fabric = lesson.fabrics[0]!;
  it('is on the table, each thing once, and every dart keeps intake = 2 L sin(θ/2) (trade notes, derived)', () => {
    for (const { id } of lesson.steps) {
      const { worked, items } = at(lesson, id, fabric);
      const keys = items.map(({ piece, what, about }) => `${piece} ${what} ${about}`);
      expect(new Set(keys).size).toBe(keys.length);
      const found = compareWithPaper(
        worked,
        items.map((item) => ({ ...item, value: 1 })),
        fabric,
      );
      for (const { state, expected } of found) {
        expect(state).not.toBe('missing');
        expect(expected).toBeGreaterThan(0);
      }
      items.forEach(({ what, about, piece }, i) => {
        if (what !== 'leg-length') return;
        const near = (other: string) =>
          found[items.findIndex((x) => x.what === other && x.about === about && x.piece === piece)]!
            .expected as number;
        const leg = found[i]!.expected as number;
        expect(near('intake')).toBeCloseTo(2 * leg * Math.sin(near('dart-angle') / 2), 4);
      });
    }
  });

  it('comes to where the whole lesson, worked in one go, comes to', () => {
    const last = lesson.steps.at(-1)!.id;
    expect(at(lesson, last, fabric).worked.pieces).toEqual(workedLesson(lesson, fabric).work.pieces);
  });
});

describe('what a step makes comes first', () => {
  it('a connector: its length, and the angle to the line, which is a right one where it is worked', () => {
    for (const [id, step, darts] of [
      ['slanted-seam', 'connectors', ['right', 'left']],
      ['line-near-the-bust-point', 'connector', ['right']],
    ] as const) {
      expect(fresh(id, step)).toEqual(
        darts.flatMap((d) => [`connector-length ${d}`, `connector-angle ${d}`]),
      );
      const lesson = loadLesson(id)!;
      const { worked } = at(lesson, step, 'woven');
      for (const dart of darts) {
        const line = worked.lines.find(({ feet }) => dart in feet)!;
        const { tip, foot } = line.feet[dart]!;
        const mm = Math.hypot(tip.x - foot.x, tip.y - foot.y) / 2;
        const entry = (what: 'connector-length' | 'connector-angle', value: number) =>
          compareWithPaper(worked, [{ what, about: dart, value }], 'woven')[0]!;
        // Half scale, a ruler's 1/32 in and a protractor's degree (trade notes; derived).
        expect(entry('connector-length', mm + 0.7)).toMatchObject({ state: 'right' });
        expect(entry('connector-length', mm + 0.9).state).toBe('wrong');
        expect(entry('connector-length', 2 * mm)).toMatchObject({
          state: 'wrong',
          cause: { code: 'scale-mixed' },
        });
        // Askew it is longer: with an angle that says so, its length is not called another scale's.
        const both = [
          { what: 'connector-length', about: dart, value: 2 * mm },
          { what: 'connector-angle', about: dart, value: Math.PI / 6 },
        ] as const;
        const [length, angle] = compareWithPaper(worked, both, 'woven');
        expect([length!.state, length!.cause, angle!.state]).toEqual(['wrong', undefined, 'wrong']);
        expect(entry('connector-angle', Math.PI / 2 - 0.017)).toMatchObject({ state: 'right' });
        expect(entry('connector-angle', Math.PI / 2 - 0.02).state).toBe('wrong');
        expect(entry('connector-angle', 1).expected).toBeCloseTo(Math.PI / 2, 6);
      }
    }
  });

  it('its three readings of the dart, where it is to be read', () => {
    expect(fresh('reading-the-block', 'read')).toEqual([
      'dart-angle right',
      'leg-length right',
      'intake right',
    ]);
  });
  it('nothing, where points are only found', () => {
    expect(fresh('reading-the-block', 'find')).toEqual([]);
  });
  it('the dart where it was moved to, and not what kept its length', () => {
    expect(fresh('waist-to-side', 'move')).toEqual(['dart-angle slash', 'leg-length slash', 'intake slash']);
  });
  it('the opening that is left over, once the pieces are apart', () => {
    expect(fresh('line-near-the-bust-point', 'separate')).toContain('opening right');
  });
  it('allowances, none of them of a seam that has none', () => {
    const items = fresh('slanted-seam', 'allowances', 'knit');
    expect(items.length).toBeGreaterThan(10);
    expect(items.every((item) => item.startsWith('allowance-width'))).toBe(true);
  });
  it('the edge that was made longer for gathers', () => {
    expect(fresh('gathers-tucks-ease', 'gathers')).toEqual(['seam-length right/shoulder']);
  });
});

describe('the tables that paper is held against', () => {
  const lesson = loadLesson('split-a-dart')!;
  const start = startWork(blockOf(lesson));
  const { commands } = workedLesson(lesson, 'woven');
  const attemptOf = (given: readonly Command[]): Attempt => ({
    format: 'pin-and-pivot/recipe',
    version: 1,
    block: blockOf(lesson),
    fabric: 'woven',
    seed: 0,
    lesson: { id: lesson.id, content: lesson.content },
    commands: given,
  });
  const ids = lesson.steps.map(({ id }) => id);
  const tables = (given: readonly Command[], step: string) =>
    paperTables(lesson, replayByStep(attemptOf(given), ids), step, start, 'woven');

  it('go on from the learner’s own earlier steps', () => {
    const moved = commands.map((command) =>
      command.do === 'draw-slash' && 'on' in command.from
        ? { ...command, from: { ...command.from, at: 0.4 } }
        : command,
    );
    expect(moved).not.toEqual(commands);
    const [right, own] = [commands, moved].map((given) =>
      tables(
        given.filter(({ step }) => step !== 'split' && step !== 'prove'),
        'split',
      ),
    );
    expect(own!.before.pieces).not.toEqual(right!.before.pieces);
    expect(own!.own).toBeUndefined();
    expect(own!.worked.pieces).not.toEqual(right!.worked.pieces);
  });
  it('take what the learner left out before a step that was worked as left out', () => {
    const without = commands.filter(({ step }) => step === 'split');
    const { before, own } = tables(without, 'split');
    expect(before.pieces).toEqual(start.pieces);
    expect(own).toBeDefined();
    // From the last step that was worked on the screen on, all is worked rightly.
    expect(tables(commands.slice(0, 1), 'split').worked.pieces).toEqual(tables([], 'split').worked.pieces);
  });
  it('are the learner’s own where the step was worked, and rightly worked where it was not', () => {
    expect(tables(commands, 'split').own?.pieces).toEqual(tables([], 'split').worked.pieces);
    expect(tables([], 'split').own).toBeUndefined();
    expect(() => tables([], 'no-such-step')).toThrow(RangeError);
  });
});

it('every field has a name of its own on its piece', () => {
  for (const [, lesson] of all)
    for (const { id } of lesson.steps) {
      const { items } = at(lesson, id, lesson.fabrics[0]!);
      const labels = items.map(({ piece, what, about }) => `${piece} ${paperLabel(what, about)}`);
      expect(new Set(labels).size).toBe(labels.length);
    }
});
