import { describe, expect, it } from 'vitest';
import { toolOf } from '../../src/lib/machines/tools/known.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { PHASES, kindOf, type Phase } from '../../src/lib/recipe/commands/known.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Command, CommandName } from '../../src/lib/recipe/types.ts';

// What a phase holds is the project's own division of the lesson, so the source of these expectations is its design. In
// this file nothing may import all commands: what a page has not fetched must be missing here too.
const names = Object.keys(PHASES) as CommandName[];
const known = () => names.filter((name) => kindOf(name) !== undefined);
const tools = () => names.filter((name) => toolOf(name) !== undefined);
const of = (...phases: Phase[]) => names.filter((name) => phases.includes(PHASES[name]));

describe('what a page fetches by phase', () => {
  it('has each command with its tool once its phase is fetched, and none before', async () => {
    const start = startWork({ figure: 'F2' });
    const label: Command = { do: 'label', piece: 'back', name: 'Back', cut: 1, rightSideUp: true };
    const { areFetched, fetchFor } = await import('../../src/lib/table/phases/index.ts');

    expect(known()).toEqual([]);
    expect(tools()).toEqual([]);
    expect(areFetched(['identify', 'read'])).toBe(false);
    await fetchFor(['read']);
    expect(known()).toEqual(of('block'));
    expect(tools()).toEqual(of('block'));
    expect(areFetched(['identify', 'read'])).toBe(true);
    expect(areFetched(['read', 'label'])).toBe(false);
    // A fault of the page, not of the learner: it must not look like a refusal.
    expect(() => apply(start, label)).toThrow("phase 'finish'");
    expect(apply(start, { do: 'fly' } as unknown as Command)).toMatchObject({
      refused: { code: 'unknown-command' },
    });

    await fetchFor(['draw-line']);
    expect(known()).toEqual(of('block', 'line'));
    expect(tools()).toEqual(of('block', 'line'));
    await fetchFor(['notch', 'connect']);
    expect(known()).toEqual(of('block', 'line', 'marks'));
    expect(tools()).toEqual(of('block', 'line', 'marks'));

    await fetchFor(['turn', 'read', 'grain', 'extend-dart']);
    expect(known()).toEqual(of('block', 'legs', 'line', 'marks', 'cut', 'finish'));
    expect(tools()).toEqual(of('block', 'legs', 'line', 'marks', 'cut', 'finish'));

    await fetchFor(['draw-slash']);
    expect(known()).toEqual(of('block', 'legs', 'line', 'marks', 'cut', 'dart', 'finish'));
    await fetchFor(['back-off']);
    expect(known()).toEqual(of('block', 'legs', 'line', 'marks', 'cut', 'dart', 'sewn', 'finish'));
    await fetchFor(['part-at-darts', 'open-out', 'draw-curve', 'cap', 'overlay', 'copy']);
    expect(known()).toEqual(names);
    expect(tools()).toEqual(names);
    expect(areFetched(names)).toBe(true);
    expect(apply(start, label)).toHaveProperty('work');
  });
});
