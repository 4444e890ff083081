import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  EMPTY,
  historyOf,
  redo,
  removeAt,
  replaceAt,
  resetStep,
  undo,
  type History,
} from '../../src/lib/recipe/history.ts';
import type { Command } from '../../src/lib/recipe/types.ts';

const reading = (value: number, step?: string): Command => ({
  do: 'read',
  what: 'intake',
  value,
  ...(step === undefined ? {} : { step }),
});

describe('history', () => {
  it('with nothing done or undone stays as it is', () => {
    expect(undo(EMPTY)).toBe(EMPTY);
    expect(redo(EMPTY)).toBe(EMPTY);
    expect(resetStep(EMPTY, 'a')).toBe(EMPTY);
    expect(replaceAt(EMPTY, 0, reading(1))).toBe(EMPTY);
    expect(removeAt(EMPTY, 3)).toBe(EMPTY);
  });

  it('undoes what was read from a file command by command', () => {
    const opened = historyOf([reading(1), reading(2)]);
    expect(undo(opened).commands).toEqual([reading(1)]);
    expect(undo(undo(opened)).commands).toEqual([]);
  });

  it('forgets what was undone once something new is done', () => {
    const h = add(undo(add(add(EMPTY, reading(1)), reading(2))), reading(3));
    expect(h.commands).toEqual([reading(1), reading(3)]);
    expect(redo(h)).toBe(h);
  });

  it('resets one step, wherever its commands stand, and one undo brings them back', () => {
    const all = [reading(1, 'a'), reading(2, 'b'), reading(3, 'a'), reading(4, 'b'), reading(5, 'a')];
    const reset = resetStep(historyOf(all), 'a');
    expect(reset.commands).toEqual([all[1], all[3]]);
    expect(undo(reset).commands).toEqual(all);
    expect(redo(undo(reset)).commands).toEqual(reset.commands);
  });

  it('after any edits, undoing them all and redoing them all comes back to the same lists', () => {
    const edit = fc.oneof(
      fc.tuple(fc.constant('add' as const), fc.nat(9), fc.constantFrom('a', 'b')),
      fc.tuple(fc.constant('replace' as const), fc.nat(9), fc.constantFrom('a', 'b')),
      fc.tuple(fc.constant('remove' as const), fc.nat(9), fc.constantFrom('a', 'b')),
      fc.tuple(fc.constant('reset' as const), fc.nat(9), fc.constantFrom('a', 'b')),
    );
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 30 }), (edits) => {
        let h: History = EMPTY;
        const seen: (readonly Command[])[] = [h.commands];
        edits.forEach(([kind, n, step], value) => {
          const before = h;
          if (kind === 'add') h = add(h, reading(value, step));
          else if (kind === 'replace') h = replaceAt(h, n, reading(value, step));
          else if (kind === 'remove') h = removeAt(h, n);
          else h = resetStep(h, step);
          if (h !== before) seen.push(h.commands);
        });
        const last = h.commands;
        for (let i = seen.length - 2; i >= 0; i--) {
          h = undo(h);
          expect(h.commands).toEqual(seen[i]);
        }
        expect(undo(h)).toBe(h);
        for (let i = 1; i < seen.length; i++) {
          h = redo(h);
          expect(h.commands).toEqual(seen[i]);
        }
        expect(h.commands).toEqual(last);
      }),
    );
  });
});
