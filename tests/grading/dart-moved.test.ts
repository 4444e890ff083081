import { describe, expect, test } from 'vitest';
import '../../src/lib/recipe/commands/index.ts';
import { angleKept } from '../../src/lib/grading/checks/angle-kept.ts';
import { dartMoved } from '../../src/lib/grading/checks/dart-moved.ts';
import { slashDrawn } from '../../src/lib/grading/checks/slash-drawn.ts';
import type { Check, CheckSpec, Finding } from '../../src/lib/grading/types.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Attempt, BlockChoice, Command } from '../../src/lib/recipe/types.ts';
import { sentence } from '../../src/lib/strings/sentence.ts';

/*
 * Judged against the rules of the dart in trade.md: the angle is what counts, the width at the edge is 2 L sin(θ/2), split angles add up
 * (derived). The block is of a demo figure.
 */

const WAIST = 'right/waist-dart';
const BUST = { landmark: 'right/bust-point' } as const;
const extend: Command = { do: 'extend-dart', dart: WAIST, to: BUST };
const draw = (slash: string, edge: string, at: number, to: object = BUST): Command =>
  ({ do: 'draw-slash', slash, from: { on: edge, at }, to }) as Command;
const cut = (slash: string, past = 0): Command => ({ do: 'cut-slash', slash, past });
const turn = (into: string, by: object, about: object = BUST, part = 'freed'): Command =>
  ({ do: 'turn', dart: WAIST, into, part, about, by }) as Command;
const MEET = { until: 'legs-meet' };

const T = (value: number) => ({ value, reason: 'passable-seam' });
const DRAWN: CheckSpec = {
  check: 'slash-drawn',
  names: { edges: ['right/side'], from: 'right/underarm', bust: 'right/bust-point' },
  numbers: { least: 0.2, most: 0.45 },
  tolerances: { place: T(3), tip: T(1.6) },
};
const MOVED: CheckSpec = {
  check: 'dart-moved',
  names: { darts: [WAIST], edges: ['right/side'] },
  tolerances: { pivot: T(0.5), gap: T(3.2), opening: T(3.2) },
};
const SUM: CheckSpec = {
  check: 'angle-kept',
  names: { bust: 'right/bust-point' },
  tolerances: { sum: T(1e-6) },
};

function mark(
  check: Check,
  spec: CheckSpec,
  commands: Command[],
  block: BlockChoice = { figure: 'F2', form: 'waist' },
) {
  const attempt = {
    format: 'pin-and-pivot/recipe',
    version: 1,
    block,
    fabric: 'woven',
    seed: 1,
    commands,
  } as const;
  const { work, unfollowed } = replay(attempt);
  const context = { before: startWork(block), after: work, commands, unfollowed, fabric: 'woven' as const };
  return check({ ...context, attempt: attempt as unknown as Attempt }, spec);
}
const wrong = (findings: readonly Finding[]) =>
  findings.filter((f) => f.state === 'wrong' || f.state === 'missing').map((f) => f.code);
const RIGHT = [extend, draw('slash', 'right/side', 0.7), cut('slash'), turn('slash', MEET)];

describe('the slash line', () => {
  test('from the side to the bust point, drawn, cut or moved, is right', () => {
    for (const n of [2, 3, 4]) expect(wrong(mark(slashDrawn, DRAWN, RIGHT.slice(0, n)))).toEqual([]);
  });
  test('is missing while nothing is drawn', () => {
    expect(wrong(mark(slashDrawn, DRAWN, [extend]))).toEqual(['slash-drawn/drawn']);
  });
  test('on another edge, at another place, to another point, or one too many', () => {
    const seen = (...commands: Command[]) => wrong(mark(slashDrawn, DRAWN, [extend, ...commands]));
    expect(seen(draw('slash', 'right/shoulder', 0.5))).toEqual(['slash-drawn/edge']);
    expect(seen(draw('slash', 'right/side', 0.2))).toEqual(['slash-drawn/place']);
    expect(seen(draw('slash', 'right/side', 0.7, { ...BUST, dx: -8 }))).toEqual(['slash-drawn/tip']);
    expect(seen(draw('slash', 'right/side', 0.7), draw('more', 'right/side', 0.6))).toEqual([
      'slash-drawn/extra',
    ]);
  });
  test('drawn to the sewn point is told so', () => {
    const to = { landmark: 'right/waist-sewn-point' };
    const [tip] = mark(slashDrawn, DRAWN, [draw('slash', 'right/side', 0.7, to)]).filter((f) =>
      f.code.endsWith('/tip'),
    );
    expect(tip!.cause).toEqual({ code: 'drawn-to-sewn-point' });
    expect(tip!.measured).toBeCloseTo(19, 6);
  });
});

describe('the moved dart', () => {
  test('slashed and turned until the legs meet is right, whichever part turns', () => {
    expect(wrong(mark(dartMoved, MOVED, RIGHT))).toEqual([]);
    expect(wrong(mark(dartMoved, MOVED, [...RIGHT.slice(0, 3), turn('slash', MEET, BUST, 'rest')]))).toEqual(
      [],
    );
    expect(wrong(mark(angleKept, SUM, RIGHT))).toEqual([]);
  });
  test('not cut, not turned, cut through', () => {
    expect(wrong(mark(dartMoved, MOVED, RIGHT.slice(0, 2)))).toEqual(['dart-moved/cut']);
    expect(wrong(mark(dartMoved, MOVED, RIGHT.slice(0, 3)))).toEqual(['dart-moved/turned']);
    const through = [extend, draw('slash', 'right/side', 0.7), cut('slash', 3), turn('slash', MEET)];
    expect(wrong(mark(dartMoved, MOVED, through))).toEqual(['dart-moved/hinge']);
  });
  test('about a point 6 mm off, half way, and the wrong way', () => {
    const seen = (by: object, about: object = BUST) =>
      mark(dartMoved, MOVED, [...RIGHT.slice(0, 3), turn('slash', by, about)]).filter(
        (f) => f.state === 'wrong',
      );
    const slipped = seen(MEET, { ...BUST, dx: 6 });
    expect(slipped[0]!.cause).toMatchObject({ code: 'pivot-slipped' });
    expect(slipped[0]!.cause!.amount).toBeCloseTo(6, 6);
    const { dartAngle } = startWork({ figure: 'F2', form: 'waist' }).block.facts;
    const whole = mark(dartMoved, MOVED, RIGHT).length > 0 ? dartAngle : 0;
    const sign = Math.sign(
      replay({
        format: 'pin-and-pivot/recipe',
        version: 1,
        block: { figure: 'F2', form: 'waist' },
        fabric: 'woven',
        seed: 1,
        commands: RIGHT,
      }).work.turns[0]!.angle,
    );
    const half = seen({ angle: (sign * whole) / 2 });
    expect(half.map((f) => f.code)).toEqual(['dart-moved/residual', 'dart-moved/opening']);
    expect(half[0]!.cause).toMatchObject({ code: 'not-closed' });
    expect(half[0]!.cause!.amount).toBeCloseTo(whole / 2, 9);
    expect(seen({ angle: -sign * whole })[0]!.cause).toMatchObject({ code: 'wrong-way' });
  });
  test('in two halves, each opening as wide as its half of the angle', () => {
    const two = [
      extend,
      draw('slash-1', 'right/side', 0.7),
      draw('slash-2', 'right/shoulder', 0.5),
      cut('slash-1'),
      cut('slash-2'),
    ];
    const spec = { ...MOVED, names: { ...MOVED.names, edges: ['right/side', 'right/shoulder'] } };
    const right = [...two, turn('slash-1', { share: 0.5 }), turn('slash-2', MEET)];
    expect(wrong(mark(dartMoved, spec, right))).toEqual([]);
    const uneven = [...two, turn('slash-1', { share: 0.7 }), turn('slash-2', MEET)];
    expect(wrong(mark(dartMoved, spec, uneven))).toEqual(['dart-moved/opening', 'dart-moved/opening']);
    expect(wrong(mark(angleKept, SUM, uneven))).toEqual([]);
  });
  test('a slash to the sewn point loses the angle at the bust point', () => {
    const to = { landmark: 'right/waist-sewn-point' };
    const sewn = [
      { do: 'extend-dart', dart: WAIST, to } as Command,
      draw('slash', 'right/side', 0.7, to),
      cut('slash'),
      turn('slash', MEET, to),
    ];
    expect(wrong(mark(angleKept, SUM, sewn))).toEqual(['angle-kept/sum']);
  });
});

describe('a dart that is to stay open and was closed', () => {
  const SIDE: CheckSpec = { ...MOVED, names: { darts: ['right'], edges: ['right/armhole'] } };
  const block: BlockChoice = { figure: 'F2', form: 'two-dart' };
  const of = (dart: string, by: object = MEET): Command =>
    ({ do: 'turn', dart, into: 'slash', part: 'freed', about: BUST, by }) as Command;
  const begun: Command[] = [
    { do: 'extend-dart', dart: 'right', to: BUST },
    extend,
    draw('slash', 'right/armhole', 0.4),
    cut('slash'),
  ];
  const seen = (...turns: Command[]) => mark(dartMoved, SIDE, [...begun, ...turns], block);
  const told = (findings: readonly Finding[]) =>
    findings
      .filter(({ state }) => state === 'wrong' || state === 'missing')
      .map((finding) => [finding.code, finding.state, finding.cause?.code, finding.about?.['open']]);

  test('instead of the other is named, though the step is only unfinished', () => {
    const findings = seen(of(WAIST));
    expect(told(findings)).toEqual([['dart-moved/turned', 'missing', undefined, undefined]]);
    expect(findings[0]!.about).toEqual({ dart: 'right', stays: WAIST });
    expect(sentence(findings[0]!, 'mm')).toBe(
      'The right side dart has not been turned yet. Here the right waist dart was closed: in this step it is to stay as it is.',
    );
  });
  test('beside the other, before or after it, wholly or in part, is why the opening is too wide', () => {
    for (const findings of [
      seen(of(WAIST), of('right')),
      seen(of('right'), of(WAIST)),
      seen(of('right'), of(WAIST, { share: 0.5 })),
    ])
      expect(told(findings)).toEqual([['dart-moved/opening', 'wrong', 'dart-to-stay', WAIST]]);
  });
  test('and opened again is none, nor is there one where all is right or nothing was done', () => {
    const right = seen(of('right'));
    expect(told(right)).toEqual([]);
    expect(told(seen())).toEqual([['dart-moved/turned', 'missing', undefined, undefined]]);
    const there = replay({
      ...{ format: 'pin-and-pivot/recipe', version: 1, block, fabric: 'woven', seed: 1 },
      commands: [...begun, of(WAIST)],
    }).work.turns.at(-1)!;
    const again = seen(of(WAIST), of(WAIST, { angle: -there.angle }), of('right'));
    expect(told(again)).toEqual([]);
  });
});

describe('a slash to the other bust point', () => {
  test('is told by its name', () => {
    const OTHER: CheckSpec = {
      ...DRAWN,
      names: { ...DRAWN.names, edges: ['right/shoulder'], bust: 'left/bust-point' },
    };
    const whole: BlockChoice = { figure: 'F2' };
    const commands: Command[] = [
      { do: 'open-out', about: 'centre-front' },
      draw('slash', 'right/shoulder', 0.5),
    ];
    const found = mark(slashDrawn, OTHER, commands, whole).find(({ code }) => code === 'slash-drawn/tip')!;
    expect(found).toMatchObject({ state: 'wrong', about: { reached: 'right/bust-point' } });
    expect(sentence(found, 'mm')).toMatch(
      /^End of the slash line from the left bust point, drawn to the right bust point: measured/,
    );
  });
});

describe('what was pinned and swung', () => {
  test('is a new dart where a cut line is a slash line', () => {
    const pivot = { do: 'pivot', dart: WAIST, slash: 'slash', from: { on: 'right/side', at: 0.3 } } as const;
    const swung: Command = { ...pivot, about: BUST, by: { until: 'legs-meet' }, part: 'freed' };
    const words = (commands: Command[]) =>
      mark(slashDrawn, DRAWN, [extend, ...commands])
        .map((finding) => sentence(finding, 'mm'))
        .join(' ');
    const place = /Where the new dart begins on the right side seam/;
    expect(words([swung])).toMatch(place);
    expect(words([swung])).not.toMatch(/slash/);
    expect(words([draw('slash', 'right/side', 0.3)])).toMatch(/Where the slash line begins/);
  });
});
