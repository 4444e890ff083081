import { describe, expect, it } from 'vitest';
import type { Stemming } from '../../src/lib/lessons/stemming.ts';
import type { Command } from '../../src/lib/recipe/types.ts';
import { markedAgain, originText, stemText } from '../../src/lib/strings/attempt.ts';
import { describe as inWords } from '../../src/lib/strings/commands.ts';

const stem = (off: number | undefined, amount: number | undefined, share: number): Stemming => ({
  step: 'move',
  finding: 0,
  code: 'dart-moved/residual',
  unit: 'mm',
  off,
  amount,
  share,
});

describe('how much stems from where it began', () => {
  it('is said signed, with amount and share, in the learner’s units', () => {
    expect(stemText(stem(6.4, 5.12, 0.8), 'mm')).toBe('Of +6.4 mm, +5.1 mm stem from there (80 %).');
    // An inch is 25.4 mm (read): half of one, and a quarter.
    expect(stemText(stem(12.7, 6.35, 0.5), 'inch')).toBe('Of +1/2 in, +1/4 in stem from there (50 %).');
    expect(stemText(stem(-8, -8, 1), 'mm')).toBe('All of it stems from there: −8 mm.');
    expect(stemText(stem(-8, 0, 0), 'mm')).toBe('None of the −8 mm stems from there.');
  });

  it('says so when faults work against each other', () => {
    expect(stemText(stem(5, -5, -1), 'mm')).toBe(
      'What began there works against it by −5 mm: without it, more would be off.',
    );
    expect(stemText(stem(5, 6, 1.2), 'mm')).toBe(
      'Of +5 mm, +6 mm stem from there (120 %): the rest works against it.',
    );
  });

  it('is yes or no where nothing is measured', () => {
    expect(stemText(stem(undefined, undefined, 1), 'mm')).toBe('It stems from there.');
    expect(stemText(stem(undefined, undefined, 0), 'mm')).toBe('It does not stem from there.');
  });
});

describe('where it began', () => {
  const titleOf = (id: string): string => id.toUpperCase();
  const command: Command = { do: 'cut-slash', slash: 'slash', past: 3, step: 'move' };

  it('names the command, its step, and where it shows when that is another one', () => {
    const began = { kind: 'began', index: 2, command, step: 'move', shows: 'prove', stemming: [] } as const;
    const text = originText(began, titleOf, 'mm');
    expect(text).toContain('command 3, in “MOVE”: Cut the slash through the end of its line, 3 mm past it.');
    expect(text).toContain('It shows in “PROVE”.');
    expect(originText({ ...began, shows: 'move' }, titleOf, 'mm')).not.toContain('It shows');
  });

  it('says what is to be done where nothing has to be taken back', () => {
    expect(originText({ kind: 'goes-on', shows: 'move' }, titleOf, 'mm')).toContain('by going on');
  });

  it('counts the steps that are accepted', () => {
    const marks = (['accepted', 'needsWork', 'accepted'] as const).map((verdict) => ({
      step: 'a',
      verdict,
      findings: [],
    }));
    expect(markedAgain(marks)).toBe('2 of 3 steps accepted, marked again from what was done.');
  });
});

describe('a command in words', () => {
  const turn: Command = {
    do: 'turn',
    dart: 'right/waist-dart',
    into: 'slash',
    part: 'freed',
    about: { landmark: 'right/bust-point' },
    by: { until: 'legs-meet' },
  };

  it('says where a line begins, where it is met and from where it is cut', () => {
    const drawn: Command = {
      do: 'draw-slash',
      slash: 'slash',
      from: { on: 'right/shoulder', at: 0.45 },
      to: { landmark: 'right/bust-point' },
    };
    expect(inWords(drawn, 'mm')).toContain('from a place at 45 % of the right shoulder seam to the');
    const slash: Command = { do: 'slash', dart: 'right', line: 'line', past: 0 };
    expect(inWords({ ...slash, from: 'end' }, 'mm')).toBe(
      'Slash along the line from its end, and along the connector up to the right bust point, not through it.',
    );
    expect(inWords(slash, 'mm')).toContain('from the line that is cut already, up to');
    expect(inWords({ do: 'notch', id: 'n1', line: 'line', at: 0.3333 }, 'mm')).toContain('at 33.3 % of its');
  });

  it('is told as it was given, not as it should have been', () => {
    expect(inWords(turn, 'mm')).toContain('about the right bust point until');
    // 0.1 rad are 5.73°; y points down, so that positive is clockwise as seen.
    const by = (angle: number): string => inWords({ ...turn, into: 'slash-1', by: { angle } }, 'mm');
    expect(by(0.1)).toMatch(/ by 5\.7° clockwise\. Slash 1 changes by as much\.$/);
    expect(by(-0.1)).toContain(' by 5.7° anticlockwise.');
    // 5, 12, 13 (Pythagoras).
    const slipped = { ...turn, about: { landmark: 'right/bust-point', dx: 5, dy: 12 } };
    expect(inWords(slipped, 'mm')).toContain('about a point 13 mm from the right bust point');
    const short: Command = { do: 'extend-dart', dart: 'right', to: { landmark: 'right/sewn-point' } };
    expect(inWords(short, 'mm')).toContain('up to the right point of the sewn dart');
    const corner: Command = {
      do: 'corner',
      piece: 'upper',
      before: 'right/shoulder',
      after: 'style-line',
      form: 'mitre',
    };
    expect(inWords(corner, 'mm')).not.toContain('flush');
  });
});
