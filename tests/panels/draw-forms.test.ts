import { describe, expect, it } from 'vitest';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import { drillLesson, type DrillWords } from '../../src/lib/lessons/drills/lesson.ts';
import { fromFragment } from '../../src/lib/lessons/drills/link.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import type { Work } from '../../src/lib/recipe/types.ts';
import { nameOf } from '../../src/lib/strings/names.ts';
import { formsFor } from '../../src/lib/panels/forms/index.ts';
import '../../src/lib/recipe/commands/index.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { sampleAttempt } from '../recipe/sample.ts';

const UNSAID: DrillWords = {
  title: () => '',
  summary: () => '',
  step: () => ({ title: '', text: [], hints: [] }),
};
const sample = sampleAttempt('F2', 'knit', { upTo: 'style-line' });
const at = sample.commands.findIndex(({ step }) => step === 'style-line');
const opened = replay({ ...sample, commands: sample.commands.slice(0, at) }).work;
const meant = replay(sample).work.lines[0]!;

const form = () => formsFor(['draw-curve'], opened, 'knit', 'mm')[0]!;
/** The form as it comes, with the sample's inner points typed into its boxes. */
function typed(): Record<string, number | string | boolean> {
  const values = Object.fromEntries(form().fields.map(({ id, value }) => [id, value]));
  // The shoulder edge runs to the neck, from which the sample counts.
  values['startAt'] = 55;
  meant.points.slice(1, -1).forEach(({ x, y }, i) => Object.assign(values, { [`x${i}`]: x, [`y${i}`]: y }));
  return values;
}

const options = (name: 'draw-line' | 'slash' | 'true', work: Work, id: string) =>
  formsFor([name], work, 'woven', 'mm')[0]!.fields.find((field) => field.id === id)!;

describe('the ends of a typed line', () => {
  it('say from which end of the edge the share counts', () => {
    const { options: starts } = options('draw-line', opened, 'start');
    const label = starts!.find(({ value }) => value === 'right/shoulder')!.label;
    expect(label).toMatch(/^right shoulder seam, from the /);
    const named = /from the (.*)$/.exec(label)![1]!;
    // The point that is named stands where the share is nothing.
    const command = formsFor(['draw-line'], opened, 'knit', 'mm')[0]!.build({ ...typed(), startAt: 0 });
    if (typeof command === 'string') throw new Error(command);
    const drawn = apply(opened, command);
    if (!('work' in drawn)) throw new Error('refused');
    const [first] = drawn.work.lines[0]!.points;
    const there = Object.entries(opened.pieces[0]!.parts[0]!.landmarks).find(
      ([id]) => nameOf(id).endsWith(named) && id.startsWith('right/'),
    )!;
    expect(distance(there[1], first!)).toBeLessThan(1e-6);
  });
});

describe('on a half front', () => {
  it('nothing of the left half is offered', () => {
    const fragment = '2.line.4711.woven.usual.3.any';
    const parsed = fromFragment(fragment);
    if (!('ok' in parsed)) throw new Error(fragment);
    const lesson = drillLesson(variantOf(parsed.ok), UNSAID);
    const { start, commands } = workedLesson(lesson, 'woven');
    const offered = new Set<string>();
    let work = start;
    for (const command of [undefined, ...commands]) {
      if (command) {
        const next = apply(work, command);
        if (!('work' in next)) throw new Error(next.refused.code);
        work = next.work;
      }
      for (const form of formsFor(['draw-line', 'slash', 'true', 'walk'], work, 'woven', 'mm'))
        for (const field of form.fields) {
          for (const { value, label } of field.options ?? []) offered.add(`${form.id} ${value} ${label}`);
          // What stands in the box is one of its choices, as long as the edges are whole.
          if (!command && field.kind === 'choice')
            expect(field.options!.map(({ value }) => value)).toContain(field.value);
        }
    }
    const all = [...offered];
    for (const form of ['draw-line', 'slash', 'true', 'walk'])
      expect(all.filter((one) => one.startsWith(form)).length, form).toBeGreaterThan(0);
    expect(all.filter((one) => /\bleft\b/.test(one))).toEqual([]);
  });
});

describe('the line in one stroke, typed', () => {
  it('runs by the typed points, from edge to edge, and is smoothed as a stroke is', () => {
    const command = form().build(typed());
    if (typeof command === 'string') throw new Error(command);
    expect(command).toMatchObject({ do: 'draw-curve', line: 'line', kinks: 0 });
    const next = apply(opened, command);
    if (!('work' in next)) throw new Error('refused');
    const { chain, ends } = next.work.lines[0]!;
    expect(ends).toEqual(['right/shoulder', 'left/side-lower']);
    for (const p of meant.points) expect(nearestOnChain(chain, p).distance).toBeLessThan(1.5);
    expect(chain.length).toBeLessThanOrEqual(6);
  });

  it('says what is wrong with a point of which only one box is filled', () => {
    expect(form().build({ ...typed(), y1: '' })).toContain('both of its boxes');
    expect(formsFor(['draw-curve'], replay({ ...sample, commands: [] }).work, 'knit', 'mm')).toEqual([]);
  });
});
