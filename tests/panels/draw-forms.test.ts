import { describe, expect, it } from 'vitest';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { formsFor } from '../../src/lib/panels/forms/index.ts';
import '../../src/lib/recipe/commands/index.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { sampleAttempt } from '../recipe/sample.ts';

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
