import { describe, expect, it } from 'vitest';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { compareWithPaper } from '../../src/lib/grading/paper.ts';
import type { PaperItem } from '../../src/lib/grading/paper-value.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { paperTables } from '../../src/lib/lessons/worked/for-paper.ts';
import { landmark, outlineOf } from '../../src/lib/pattern/outline.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Fabric, Work } from '../../src/lib/recipe/types.ts';
import { CAUSES } from '../../src/lib/strings/causes.ts';
import { sentence } from '../../src/lib/strings/sentence.ts';
import { asPath } from '../print/sheet.ts';

// A bust of 1100 mm has a dart of B/4 − 2.5 = 25° (Bunka; memory).
const work = startWork({ measures: { bust: 1100, waist: 900, napeToWaist: 400 }, form: 'waist' });
const dart = 'right/waist-dart';
const degree = Math.PI / 180;
/** By definition of the inch; half of a sixteenth, which is 1/16 in of the garment: careful work (trade notes). */
const THIRTY_SECOND = 25.4 / 32;

const compare = (table: Work, item: PaperItem, value: number, fabric: Fabric = 'woven') =>
  compareWithPaper(table, [{ ...item, value }], fabric)[0]!;
const of = (what: PaperItem['what'], value: number, about = dart) => compare(work, { what, about }, value);

/** The table after a step of a lesson, worked rightly. */
function after(lesson: string, step: string, fabric: Fabric = 'woven'): Work {
  const found = loadLesson(lesson)!;
  return paperTables(found, new Map(), step, startWork(blockOf(found)), fabric).worked;
}

describe('values measured on half-scale paper', () => {
  it('takes a dart of 25° within a degree, the same at any scale', () => {
    expect(of('dart-angle', 25.9 * degree)).toMatchObject({
      state: 'right',
      unit: 'rad',
      reason: 'protractor',
    });
    expect(of('dart-angle', 24.1 * degree).state).toBe('right');
    expect(of('dart-angle', 26.1 * degree).state).toBe('wrong');
  });

  it('expects half of an intake of 2 L sin(θ/2) (trade notes, derived), within 1/32 in of a ruler', () => {
    const half = of('leg-length', 1).expected as number;
    const intake = 2 * half * Math.sin(12.5 * degree);
    expect(of('intake', intake)).toMatchObject({
      state: 'right',
      unit: 'mm',
      tolerance: THIRTY_SECOND,
      reason: 'half-scale-ruler',
    });
    expect(of('intake', intake).expected).toBeCloseTo(intake, 6);
    // 25° at L 150 is 64.93 mm (trade notes): the same ratio here.
    expect(intake / half).toBeCloseTo(64.93 / 150, 4);
    expect(of('intake', intake + 0.79).state).toBe('right');
    expect(of('intake', intake - 0.8).state).toBe('wrong');
  });

  it('expects half of the leftover 2 d sin(θ/2) (trade notes, derived) in the seam of a line at d from the bust point', () => {
    const before = after('line-near-the-bust-point', 'connector');
    const bust = landmark(before.pieces[0]!, 'right/bust-point')!;
    const connector = before.pieces[0]!.parts.flatMap(({ lines }) => lines).find(
      ({ kind }) => kind === 'connector',
    )!;
    const foot = connector.chain.at(-1)!.d;
    const d = Math.hypot(foot.x - bust.x, foot.y - bust.y);
    const half = d * Math.sin(before.block.facts.dartAngle / 2);
    expect(half).toBeGreaterThan(1);
    const moved = after('line-near-the-bust-point', 'separate');
    const opening = (value: number) => compare(moved, { what: 'opening', about: 'right' }, value);
    expect(opening(half).expected).toBeCloseTo(half, 6);
    expect(opening(half)).toMatchObject({ state: 'right', about: { piece: 'lower' } });
    expect(opening(half + 0.8).state).toBe('wrong');
    // The twice as large value of the garment itself.
    expect(opening(2 * half).cause).toEqual({ code: 'scale-mixed' });
  });

  it('expects half of a seam’s length, curved or broken by an open dart (measured by paper.js)', () => {
    const edges = outlineOf(work.pieces[0]!);
    for (const group of ['neckline', 'waist', 'right/armhole', 'right/side']) {
      const role = group.replace('right/', '');
      const full = edges
        .filter((edge) => edge.role === role)
        .reduce((sum, { chain }) => sum + asPath(chain).length, 0);
      expect(full).toBeGreaterThan(100);
      expect(of('seam-length', full / 2, group).expected as number).toBeCloseTo(full / 2, 3);
      expect(of('seam-length', full / 2 - 0.78, group).state).toBe('right');
      expect(of('seam-length', full / 2 - 0.81, group).state).toBe('wrong');
    }
  });

  it('leaves out of a seam what a dart’s cap folds away', () => {
    const capped = after('finish-a-dart', 'cap-side-dart');
    const sides = outlineOf(capped.pieces[0]!).filter(({ role }) => role === 'side');
    const sewn = sides.reduce((sum, { chain }) => sum + asPath(chain).length, 0);
    const side = compare(capped, { what: 'seam-length', about: 'right/side' }, sewn / 2);
    expect(sides.length).toBe(2);
    expect(side.expected as number).toBeCloseTo(sewn / 2, 3);
  });

  it('expects half of an allowance: 3/8 in of the garment are 3/16 in on paper (definition of the inch)', () => {
    const done = after('slanted-seam', 'allowances', 'knit');
    const width = (about: string, value: number) =>
      compare(done, { what: 'allowance-width', about, piece: 'upper' }, value, 'knit');
    // The lesson gives its style line 3/8 in for a knit, its neckline 1/4 in (trade notes: usual for both).
    expect(width('style-line', (25.4 * 3) / 16)).toMatchObject({ state: 'right', expected: 9.525 / 2 });
    expect(width('neckline', 25.4 / 8)).toMatchObject({ state: 'right', expected: 6.35 / 2 });
    expect(width('style-line', 9.525)).toMatchObject({ state: 'wrong', cause: { code: 'scale-mixed' } });
    expect(width('centre-front', 5).state).toBe('missing');
  });

  it('is missing where the table has no such thing, or the value is no number', () => {
    expect(of('allowance-width', 5).state).toBe('missing');
    expect(of('opening', 5).state).toBe('missing');
    expect(of('seam-length', 5, 'style-line').state).toBe('missing');
    expect(of('intake', NaN).state).toBe('missing');
  });
});

describe('the likely cause of what is off', () => {
  const half = of('leg-length', 1).expected as number;
  const intake = of('intake', 1).expected as number;
  const piece = work.pieces[0]!;
  const [sewn, bust] = ['right/waist-sewn-point', 'right/bust-point'].map((id) => landmark(piece, id)!);
  const [inner, outer] = ['centre', 'side'].map((side) => landmark(piece, `right/waist-dart-${side}-end`)!);
  const away = Math.hypot(inner!.x - sewn!.x, inner!.y - sewn!.y);
  /** The angle that a protractor shows with its centre on the sewn point (law of cosines). */
  const drawn = Math.acos(1 - (Math.hypot(inner!.x - outer!.x, inner!.y - outer!.y) / away) ** 2 / 2);

  it.each([
    ['the full size, twice of half', 'leg-length', 2 * half, 'scale-mixed'],
    ['half of half', 'leg-length', half / 2, 'scale-mixed'],
    ['centimetres', 'leg-length', half / 10, 'centimetres-entered'],
    ['from the sewn point', 'leg-length', away / 2, 'measured-at-sewn-point'],
    ['the intake for the leg', 'leg-length', intake, 'intake-for-leg'],
    ['the leg for the intake', 'intake', half, 'leg-for-intake'],
    ['the angle at the sewn point', 'dart-angle', drawn, 'measured-at-sewn-point'],
    ['the other row of the protractor', 'dart-angle', 155 * degree, 'protractor-other-row'],
    ['half of the dart', 'dart-angle', 12.5 * degree, 'half-the-angle'],
  ] as const)('%s', (_, what, value, code) => {
    expect(of(what, value)).toMatchObject({ state: 'wrong', cause: { code } });
    expect(CAUSES).toHaveProperty([code]);
  });

  it('an open dart that was measured along with its seam', () => {
    const waist = of('seam-length', 1, 'waist').expected as number;
    expect(of('seam-length', waist + intake, 'waist').cause).toEqual({ code: 'dart-measured-along' });
    expect(CAUSES).toHaveProperty(['dart-measured-along']);
  });

  it('the sewn point lies off the bust point, so that the two can be told apart', () => {
    expect(Math.hypot(sewn!.x - bust!.x, sewn!.y - bust!.y)).toBeGreaterThan(10);
  });

  it('names none where none is near, where the value is right, or where two explain it', () => {
    expect(of('leg-length', half + 5).cause).toBeUndefined();
    expect(of('leg-length', half + 0.5).cause).toBeUndefined();
    // Of an allowance of 3 mm (1.5 on paper) 0.5 may be half of half, 0.75, or centimetres, 0.15: both within 1/32 in.
    const narrow = { ...work, pieces: [{ ...piece, allowances: { neckline: 3 } }] };
    const read = (value: number) => compare(narrow, { what: 'allowance-width', about: 'neckline' }, value);
    expect(read(0.5)).toMatchObject({ state: 'wrong', cause: undefined });
    expect(read(3).cause).toEqual({ code: 'scale-mixed' });
  });
});

describe('whether a dart that is off agrees with itself', () => {
  const three = (leg: number, degrees: number, intake: number) =>
    compareWithPaper(
      work,
      [
        { what: 'dart-angle', about: dart, value: degrees * degree },
        { what: 'leg-length', about: dart, value: leg },
        { what: 'intake', about: dart, value: intake },
      ],
      'woven',
    ).filter(({ code }) => code === 'paper/agrees');

  it.each([
    // Trade notes, derived: L 150, 25° -> 64.93; 10° -> 26.15, 15° -> 39.16; 20 mm over 130 -> 8.82°; 70 mm over 250 -> 16.10°.
    [150, 25, 64.93],
    [150, 10, 26.15],
    [150, 15, 39.16],
    [130, 8.82, 20],
    [250, 16.1, 70],
  ])('a leg of %f at %f° makes %f', (leg, degrees, intake) => {
    const [right] = three(leg, degrees, intake);
    expect(right!.state).toBe('note');
    expect(right!.expected).toBeCloseTo(intake, 1);
    // 1° on the leg, 1/32 in on intake and leg: worked out apart by moving each reading to its end.
    const ends = [-1, 1].map(
      (end) =>
        2 * (leg + end * THIRTY_SECOND) * Math.sin(((degrees + end) * degree) / 2) + end * THIRTY_SECOND,
    );
    expect(right!.tolerance).toBeCloseTo((ends[1]! - ends[0]!) / 2, 1);
    expect(three(leg, degrees, intake + right!.tolerance! + 0.1)[0]!.state).toBe('wrong');
  });
  it('is not asked where all is right, or not all three were measured', () => {
    const half = of('leg-length', 1).expected as number;
    expect(three(half, 25, 2 * half * Math.sin(12.5 * degree))).toEqual([]);
    expect(compareWithPaper(work, [{ what: 'intake', about: dart, value: 5 }], 'woven')).toHaveLength(1);
  });
  it('is not asked where the cause is known: all three at full size agree, too', () => {
    const full = 2 * (of('leg-length', 1).expected as number);
    expect(three(full, 25, 2 * full * Math.sin(12.5 * degree))).toEqual([]);
  });
  it('says what it means', () => {
    expect(sentence(three(150, 25, 64.93)[0]!, 'mm')).toMatch(/agree with each other.*: measured 64\.9 mm/);
    expect(sentence(three(150, 25, 90)[0]!, 'mm')).toMatch(
      /one of them was misread.*tolerance .* \(what reading/,
    );
  });
});

describe('the tolerance in the learner’s units', () => {
  const half = of('leg-length', 1).expected as number;
  it('is 0.8 mm or 1/32 in, and values on paper are told to 1/32 in', () => {
    const wrong = of('leg-length', half + 5);
    expect(sentence(wrong, 'mm')).toContain('tolerance 0.8 mm (a ruler on paper is read no finer');
    expect(sentence(wrong, 'inch')).toContain('tolerance 1/32 in');
    // 65 / 25.4 = 2.559 in, nearest 1/32: 2 9/16 = 2.5625; 64 / 25.4 = 2.5197, nearest: 2 17/32 = 2.53125 (arithmetic).
    expect(sentence(of('intake', 65), 'inch')).toContain('measured 2 9/16 in');
    expect(sentence(of('intake', 64), 'inch')).toContain('measured 2 17/32 in');
  });
  it('is that of the ruler on the paper in an exercise at half scale, too, like all that was measured there', () => {
    for (const [units, ruler] of [
      ['half mm', 'mm'],
      ['half inch', 'inch'],
    ] as const)
      for (const finding of [of('leg-length', half + 5), of('intake', 65), of('dart-angle', 1)])
        expect(sentence(finding, units)).toBe(sentence(finding, ruler));
    expect(sentence(of('leg-length', 120), 'half mm')).toContain('measured 120 mm');
  });
  it('names what was measured', () => {
    expect(sentence(of('intake', 5), 'mm')).toMatch(
      /^Intake of the right waist dart on your paper: measured 5 mm/,
    );
    expect(sentence(of('seam-length', 5, 'neckline'), 'mm')).toMatch(
      /^Length of the neckline on your paper, front/,
    );
  });
});
