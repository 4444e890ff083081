import { describe, expect, it } from 'vitest';
import { chainLength } from '../../src/lib/geometry/chain.ts';
import { measuresOf } from '../../src/lib/panels/measures.ts';
import { outlineOf } from '../../src/lib/pattern/outline.ts';
import { measureRows } from '../../src/lib/print/measures.ts';
import { resultSheet } from '../../src/lib/print/result-sheet.ts';
import { pieceModel } from '../../src/lib/table/model.ts';
import '../../src/lib/table/phases/finish.ts';
import '../../src/lib/table/phases/fullness.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import type { Command, Work } from '../../src/lib/recipe/types.ts';
import { FINISH_TABLES } from '../machines/finish-tables.ts';
import { measured, readSheet, wellFormed } from './sheet.ts';

const WAIST = 'right/waist-dart';

function after(work: Work, ...commands: Command[]): Work {
  return commands.reduce((now, command) => {
    const next = apply(now, command);
    if ('refused' in next) throw new Error(next.refused.code);
    return next.work;
  }, work);
}
const capped = after(
  FINISH_TABLES['cap']!,
  { do: 'back-off', dart: WAIST, by: 19 },
  { do: 'cap', dart: WAIST, fold: 'centre' },
);
const full = after(
  FINISH_TABLES['fullness']!,
  { do: 'fullness', dart: 'slash', as: 'tucks', before: 20, after: 20, tucks: 2 },
  { do: 'fullness', dart: WAIST, as: 'gathers', before: 25, after: 25 },
);
const print = (work: Work) => resultSheet(work, { fabric: 'knit', units: 'mm', lessonTitle: 'Finishing' });

// What a sheet and the table show of it is the project's own design; that it is half of the full size is not.
describe('a finished dart', () => {
  it('is printed with its cap in the seam line and its folds at half scale', () => {
    const svg = print(capped);
    expect(wellFormed(svg)).toBe(true);
    const folds = readSheet(svg).paths.filter(({ line, piece }) => line === 'fold' && piece === 'front');
    const lines = capped.pieces[0]!.parts.flatMap((p) => p.lines.filter((l) => l.kind === 'fold'));
    expect(folds).toHaveLength(3);
    expect(svg).toContain('folds');
    folds.forEach(({ d }, i) =>
      expect(Math.abs(measured(d).length - chainLength(lines[i]!.chain) / 2)).toBeLessThan(1e-3),
    );
  });

  it('leaves its cap out of the length of the seam', () => {
    const row = (work: Work) => measureRows(work.pieces[0]!, 'mm').filter(([name]) => name === 'waist');
    const before = outlineOf(FINISH_TABLES['cap']!.pieces[0]!).filter((e) => e.role === 'waist');
    const sum = before.reduce((all, e) => all + chainLength(e.chain), 0);
    expect(row(capped)).toHaveLength(1);
    expect(Number.parseFloat(row(capped)[0]![1])).toBeCloseTo(sum, 0);
  });

  it('is told in words: how far off, how folded', () => {
    const told = measuresOf(capped.pieces[0]!, 'mm').find((g) => g.title === 'Made of the darts')!;
    expect(told.measures.map((m) => m.value)).toEqual([
      'sewn point 19 mm from its tip, cap folded to centre front',
    ]);
  });
});

describe('fullness', () => {
  it('is printed with what is to be taken up, and told in words', () => {
    const svg = print(full);
    expect(wellFormed(svg)).toBe(true);
    expect(svg).toMatch(/>gather in \d+(\.\d)? mm</);
    expect(svg).toMatch(/>tuck in \d+(\.\d)? mm</);
    const { fullness } = full.pieces[0]!;
    const told = measuresOf(full.pieces[0]!, 'mm').find((g) => g.title === 'Made of the darts')!;
    expect(told.measures[0]!.value).toContain(`2 tucks, ${fullness![0]!.fullness.toFixed(1)} mm`);
    expect(measureRows(full.pieces[0]!, 'mm').at(-1)![0]).toContain('gathers in it');
  });

  it('is drawn on the table: a wave beside gathers, folds for tucks, notches at the ends', () => {
    const model = pieceModel(full.pieces[0]!);
    const strokes = model.strokes.map((s) => s.stroke);
    expect(strokes.filter((s) => s === 'gathered')).toHaveLength(1);
    expect(strokes.filter((s) => s === 'notch')).toHaveLength(4);
    expect(model.parts.flatMap((p) => p.strokes).filter((s) => s.stroke === 'fold')).toHaveLength(4);
    // On the paper, beside the edge: inside its box.
    const wave = measured(model.strokes.find((s) => s.stroke === 'gathered')!.d).bounds;
    const sheet = measured(model.sheet!).bounds;
    expect(wave.width).toBeLessThan(sheet.width);
    expect(wave.height).toBeLessThan(sheet.height);
  });
});
