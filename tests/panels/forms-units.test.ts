import { describe, expect, it } from 'vitest';
import { formsFor } from '../../src/lib/panels/forms/index.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { sampleAttempt } from '../recipe/sample.ts';

/** Every word of the forms of a step: titles, notes, labels and options. */
function words(upTo: 'notches' | 'separate', units: 'mm' | 'inch'): string {
  const { work } = replay(sampleAttempt('F2', 'knit', { upTo }));
  const tools = upTo === 'notches' ? (['notch', 'remove-notch', 'connect'] as const) : (['bridge'] as const);
  return formsFor(tools, work, 'knit', units)
    .flatMap((form) => [
      form.note ?? '',
      ...form.fields.flatMap((f) => [f.label, ...(f.options ?? []).map((o) => o.label)]),
    ])
    .join(' ');
}

describe('the measures in the typed forms', () => {
  it.each(['notches', 'separate'] as const)('are in inches for those who work in inches: %s', (upTo) => {
    expect(words(upTo, 'inch')).toMatch(/\d in\b/);
    expect(words(upTo, 'inch')).not.toMatch(/\d mm\b/);
    expect(words(upTo, 'mm')).toMatch(/\d mm\b/);
  });
});
