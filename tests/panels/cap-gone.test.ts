import { describe, expect, it } from 'vitest';
import { capGone } from '../../src/lib/panels/cap-gone.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import type { Command, Work } from '../../src/lib/recipe/types.ts';
import { FINISH_TABLES } from '../machines/finish-tables.ts';

const dart = 'right/waist-dart';
function after(work: Work, command: Command): Work {
  const next = apply(work, command);
  if ('refused' in next) throw new Error(next.refused.code);
  return next.work;
}

describe('what is said when a cap goes with its sewn point', () => {
  const plain = FINISH_TABLES['back-off']!;
  const backedOff = after(plain, { do: 'back-off', dart, by: 16 });
  const capped = after(backedOff, { do: 'cap', dart, fold: 'centre' });

  it('nothing while there was none, or while it stays', () => {
    expect(capGone(plain, backedOff)).toBe('');
    expect(capGone(backedOff, capped)).toBe('');
    expect(capGone(capped, after(capped, { do: 'cap', dart, fold: 'side' }))).toBe('');
  });

  it('names the dart whose cap went', () => {
    expect(capGone(capped, after(capped, { do: 'back-off', dart, by: 20 }))).toContain(
      'cap of the right waist dart',
    );
  });
});
