import { describe, expect, it } from 'vitest';
import { formsFor } from '../../src/lib/panels/forms/index.ts';
import { sewnPieces } from '../../src/lib/panels/pieces.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import type { CommandName } from '../../src/lib/recipe/types.ts';
import { FINISH_TABLES } from '../machines/finish-tables.ts';

// Forms are the project's own design: what they offer must be what can be done, by the same `apply` as everything else.
describe('the forms that finish darts', () => {
  it.each(Object.entries(FINISH_TABLES))('%s: what stands in the form can be given at once', (name, work) => {
    const forms = formsFor([name as CommandName], work, 'knit', 'mm');
    expect(forms.length).toBeGreaterThan(0);
    for (const form of forms) {
      const values = Object.fromEntries(form.fields.map((field) => [field.id, field.value]));
      const command = form.build(values);
      expect(command).toMatchObject({ do: name });
      if (typeof command !== 'string') expect(apply(work, command)).toHaveProperty('work');
    }
  });

  it('say what is missing', () => {
    const [form] = formsFor(['fullness'], FINISH_TABLES['fullness']!, 'knit', 'mm');
    expect(form!.build({ dart: 'slash', as: 'tucks', before: 20, after: 20 })).toContain('Number of tucks');
    const [part] = formsFor(['part-at-darts'], FINISH_TABLES['part-at-darts']!, 'knit', 'mm');
    expect(part!.build({ one: 'slash', two: 'slash' })).toContain('different');
  });

  it('let a finished front and the pieces of a princess line have allowances and labels', () => {
    const parted = FINISH_TABLES['smooth-seam']!;
    expect(sewnPieces(parted.pieces, 'knit').map((p) => p.id)).toEqual([
      'front-centre',
      'front-side',
      'back',
    ]);
    const names = formsFor(['allow', 'label', 'carry-notches'], parted, 'knit', 'mm').map((f) => f.title);
    expect(names.filter((n) => n.includes('front, centre piece'))).toHaveLength(3);
    const plain = FINISH_TABLES['cap']!;
    expect(sewnPieces(plain.pieces, 'knit')).toEqual([]);
    const capped = apply(plain, { do: 'cap', dart: 'right/waist-dart', fold: 'side' });
    if ('refused' in capped) throw new Error(capped.refused.code);
    expect(sewnPieces(capped.work.pieces, 'knit').map((p) => p.id)).toEqual(['front', 'back']);
  });

  it('no allowance, because the edge is bound or lies on the fold, is the same command as a typed 0', () => {
    const parted = FINISH_TABLES['smooth-seam']!;
    const forms = formsFor(['allow', 'label'], parted, 'knit', 'mm');
    const allow = forms.find(({ id }) => id === 'allow-back')!;
    const none = allow.build({ group: 'centre-back', how: 'typed', width: 0 });
    expect(none).toEqual({ do: 'allow', piece: 'back', group: 'centre-back', width: 0 });
    for (const how of ['fold', 'bound']) expect(allow.build({ group: 'centre-back', how })).toEqual(none);
    expect(allow.build({ group: 'waist', how: 'fold' })).toBe('Edge: only centre back lies on the fold.');
    expect(allow.build({ group: 'waist', how: 'typed', width: '' })).toBe('Width: a number is expected.');
    // What has no centre edge cannot lie on the fold.
    const side = forms.find(({ id }) => id === 'allow-front-side')!;
    const ways = side.fields.find(({ id }) => id === 'how')!.options!.map(({ value }) => value);
    expect(ways).toEqual(['typed', 'bound']);
    expect(forms.find(({ id }) => id === 'label-front-side')!.fields.map(({ id }) => id)).not.toContain(
      'onFold',
    );
    const label = forms.find(({ id }) => id === 'label-back')!;
    const plain = { do: 'label', piece: 'back', name: 'Back', cut: 1, rightSideUp: false };
    expect(label.build({ name: 'Back', cut: 1, rightSideUp: false, onFold: false })).toEqual(plain);
    expect(label.build({ name: 'Back', cut: 1, rightSideUp: false, onFold: true })).toEqual({
      ...plain,
      onFold: true,
    });
  });
});
