import { describe, expect, it } from 'vitest';
import '../../src/lib/recipe/commands/index.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Command, DrawnLine, Work } from '../../src/lib/recipe/types.ts';
import { withoutFoot } from '../../src/lib/recipe/connectors.ts';
import { sampleAttempt } from './sample.ts';

// That a connector changes nothing of a line's record but its feet is the project's own rule.
const commands = sampleAttempt('F2', 'knit').commands;
const until = commands.findIndex((c) => c.do === 'connect');
const connect = commands[until] as Extract<Command, { do: 'connect' }>;
const drawn = commands.slice(0, until).reduce(
  (work: Work, command) => {
    const next = apply(work, command);
    return 'work' in next ? next.work : work;
  },
  startWork({ figure: 'F2' }),
);

/** A line's record that has every field; the compiler says when one is missing here. */
const full = (line: DrawnLine): Required<DrawnLine> => ({ ...line, kind: 'slash', kinks: 2 });

describe('the record of a drawn line', () => {
  const table: Work = { ...drawn, lines: [full(drawn.lines[0]!)] };
  const before = table.lines[0]!;

  it('keeps all else when a connector is drawn to it, and when that is taken off', () => {
    const next = apply(table, connect);
    if ('refused' in next) throw new Error(JSON.stringify(next.refused));
    const after = next.work.lines[0]!;
    expect(Object.keys(after.feet)).toEqual([connect.dart]);
    expect({ ...after, feet: {} }).toEqual({ ...before, feet: {} });
    expect(withoutFoot(next.work, connect.dart).lines).toEqual(table.lines);
  });
});
