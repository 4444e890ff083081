import { describe, expect, it } from 'vitest';
import '../../src/lib/machines/tools/index.ts';
import { ALL_TOOLS } from '../../src/lib/lessons/bench.ts';
import { toolGroups } from '../../src/lib/panels/bench/able.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import '../../src/lib/recipe/commands/index.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Command, CommandName, Work } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from '../recipe/sample.ts';

const B = { landmark: 'right/bust-point' };
const SLASH: readonly Command[] = [
  { do: 'extend-dart', dart: 'right', to: B },
  { do: 'draw-slash', slash: 'slash', from: { on: 'right/shoulder', at: 0.5 }, to: B },
  { do: 'cut-slash', slash: 'slash', past: 0 },
  { do: 'turn', dart: 'right', into: 'slash', part: 'freed', about: B, by: { until: 'legs-meet' } },
];
function after(work: Work, commands: readonly Command[]): Work {
  return commands.reduce((now, command) => {
    const next = apply(now, command);
    if ('refused' in next) throw new Error(JSON.stringify(next.refused));
    return next.work;
  }, work);
}
const able = (work: Work): readonly CommandName[] =>
  toolGroups({ work, fabric: 'woven' }).flatMap((group) => group.able);
const half = startWork({ figure: 'F2', form: 'side' });

describe('the tools of the bench', () => {
  it('are all there, each in one part of the work, able or waiting', () => {
    for (const work of [startWork({ figure: 'F2' }), half, after(half, SLASH)]) {
      const all = toolGroups({ work, fabric: 'woven' }).flatMap((group) => [...group.able, ...group.waiting]);
      expect([...all].sort()).toEqual([...ALL_TOOLS].sort());
    }
  });

  it('come forward when there is something for them to do, and wait otherwise', () => {
    // The scissors wait for a slash line, the turn for a cut, both are done with after it.
    expect(able(after(half, SLASH.slice(0, 2)))).toContain('cut-slash');
    expect(able(after(half, SLASH.slice(0, 2)))).not.toContain('turn');
    expect(able(after(half, SLASH.slice(0, 3)))).toContain('turn');
    expect(able(after(half, SLASH))).not.toContain('turn');
    expect(able(after(half, SLASH))).not.toContain('extend-dart');
  });

  it('have the turn beside the scissors, whose words say that it comes next', () => {
    const groups = toolGroups({ work: after(half, SLASH.slice(0, 3)), fabric: 'woven' });
    expect(groups.find(({ id }) => id === 'cut')!.able).toContain('turn');
    expect(groups.find(({ able: all, waiting }) => [...all, ...waiting].includes('cut-slash'))!.id).toBe(
      'cut',
    );
  });

  it('draw nothing on the half that is to be opened out', () => {
    const closed = able(startWork({ figure: 'F2' }));
    expect(closed).toContain('open-out');
    for (const tool of ['draw-line', 'draw-slash', 'pivot', 'separate'] as const)
      expect(closed).not.toContain(tool);
  });

  it('offer each tool of the main lesson at the moment at which its next command is given', () => {
    const { block, fabric, commands } = sampleAttempt('F2', 'woven');
    let work = startWork(block);
    for (const command of commands) {
      const groups = toolGroups({ work, fabric });
      expect(groups.flatMap((group) => group.able)).toContain(command.do);
      work = after(work, [command]);
    }
  });
});
