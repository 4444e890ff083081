import { beforeAll, describe, expect, it } from 'vitest';
import { checkAttempt, parseAttempt, parseRecipe, type Parsed } from '../../src/lib/recipe/parse.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import type { Recipe } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from './sample.ts';

/** A recipe as data, with any part of it replaced. */
const recipe = (change: Record<string, unknown> = {}) => ({
  format: 'pin-and-pivot/recipe',
  version: 1,
  block: { figure: 'F2' },
  fabric: 'knit',
  seed: 7,
  commands: [{ do: 'open-out', about: 'centre-front' }],
  ...change,
});
const parse = (data: unknown) => parseRecipe(JSON.stringify(data));
const commands = (...list: unknown[]) => parse(recipe({ commands: list }));
const problems = (parsed: Parsed<Recipe>) => {
  if ('ok' in parsed) throw new Error('it was accepted');
  return parsed.problems;
};
const first = (parsed: Parsed<Recipe>) => problems(parsed)[0]!;

let sample = '';
beforeAll(() => {
  sample = toText(sampleAttempt('F2', 'woven'));
});

describe('reading a file', () => {
  it('gives back what was saved', () => {
    expect(parse(recipe())).toEqual({ ok: recipe() });
    const attempt = sampleAttempt('F3', 'knit');
    expect(parseAttempt(toText(attempt))).toEqual({ ok: attempt });
  });

  it('saves the same text again, whatever the order of the keys was', () => {
    const parsed = parseAttempt(sample);
    if (!('ok' in parsed)) throw new Error('refused');
    expect(toText(parsed.ok)).toBe(sample);
    const shuffled = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(shuffled)
        : typeof value === 'object' && value !== null
          ? Object.fromEntries(
              Object.entries(value)
                .reverse()
                .map(([k, v]) => [k, shuffled(v)]),
            )
          : value;
    expect(toText(shuffled(parsed.ok) as Recipe)).toBe(sample);
  });

  it('refuses a text cut off anywhere, and says where it ends', () => {
    const attempt = sampleAttempt('F2', 'woven', { upTo: 'connectors' });
    const bytes = new TextEncoder().encode(toText(attempt).trimEnd());
    const decoder = new TextDecoder();
    for (let n = 0; n < bytes.length; n++) {
      const text = decoder.decode(bytes.subarray(0, n));
      const parsed = parseAttempt(text);
      const lines = text.split('\n');
      expect(problems(parsed)).toHaveLength(1);
      const { path, found } = first(parsed);
      expect(path).toBe('');
      expect(found).toContain(`at line ${lines.length}, column `);
    }
  }, 60_000);

  it('refuses what is not a recipe at all', () => {
    expect(first(parse(null))).toMatchObject({ path: '' });
    expect(first(parse([]))).toMatchObject({ path: '' });
    expect(first(parse({}))).toMatchObject({ path: 'format', found: 'nothing' });
    expect(first(parse(recipe({ format: 'other' })))).toMatchObject({ path: 'format', found: '"other"' });
  });

  it('refuses a newer version by its number only, whatever else is in the file', () => {
    const parsed = parse(recipe({ version: 2, commands: [{ do: 'fly' }], extra: 1 }));
    expect(problems(parsed)).toEqual([
      { path: 'version', expected: '1', found: '2, from a newer version of Pin & Pivot' },
    ]);
    expect(first(parse(recipe({ version: '1' })))).toMatchObject({ path: 'version', found: '"1"' });
    expect(first(parse(recipe({ version: 0 })))).toMatchObject({ path: 'version' });
  });

  it('refuses an unknown command and lists those that exist', () => {
    const problem = first(commands({ do: 'open-out', about: 'centre-front' }, { do: 'fly' }));
    expect(problem).toMatchObject({ path: 'commands[1].do', found: '"fly"' });
    expect(problem.expected).toContain('"draw-line"');
    expect(first(commands({}))).toMatchObject({ path: 'commands[0].do', found: 'nothing' });
    expect(first(commands(5))).toMatchObject({ path: 'commands[0]', found: '5' });
  });

  it('names the place of every fault, to twenty', () => {
    const list = problems(
      commands(
        { do: 'notch', id: 'n1', line: 'line', at: 1.5 },
        { do: 'label', piece: 'upper', name: 'x', cut: 1.5, rightSideUp: 'yes' },
        { do: 'open-out' },
        {
          do: 'draw-line',
          line: 'line',
          points: [
            { on: 'a', at: 'x' },
            { inside: 'front', weights: [1] },
          ],
        },
        { do: 'turn', dart: 'right', part: 'freed', about: { landmark: 'b', dz: 1 }, by: { until: 'noon' } },
      ),
    ).map((p) => p.path);
    expect(list).toEqual([
      'commands[0].at',
      'commands[1].cut',
      'commands[1].rightSideUp',
      'commands[2].about',
      'commands[3].points[0].at',
      'commands[3].points[1].weights',
      'commands[4].about.dz',
      'commands[4].by.until',
    ]);
    expect(problems(commands(...Array.from({ length: 100 }, () => ({ do: 'fly' }))))).toHaveLength(20);
  });

  it('refuses numbers that are not finite, however they are written', () => {
    const text = JSON.stringify(recipe({ commands: [{ do: 'read', what: 'intake', value: 12345 }] }));
    expect(first(parseRecipe(text.replace('12345', '1e999')))).toMatchObject({
      path: 'commands[0].value',
      found: 'Infinity',
    });
    expect(first(parseRecipe(text.replace('12345', 'NaN'))).path).toBe('');
    expect(first(parseRecipe(text.replace('12345', '-1e300'))).path).toBe('commands[0].value');
  });

  it('refuses absurd sizes at once', () => {
    const open = { do: 'open-out', about: 'centre-front' };
    const many = Array.from({ length: 5001 }, () => open);
    expect(first(commands(...many))).toEqual({
      path: 'commands',
      expected: 'at most 5000 entries',
      found: '5001 entries',
    });
    expect(parse(recipe({ commands: many.slice(1) }))).toHaveProperty('ok');
    const points = Array.from({ length: 201 }, () => ({ on: 'a', at: 0 }));
    expect(first(commands({ do: 'draw-line', line: 'line', points }))).toMatchObject({
      path: 'commands[0].points',
      found: '201 entries',
    });
    const long = { do: 'draw-line', line: 'line', points: points.slice(1) };
    expect(commands(...Array.from({ length: 100 }, () => long))).toHaveProperty('ok');
    expect(first(commands(...Array.from({ length: 101 }, () => long)))).toMatchObject({
      found: '20200 points',
    });
    const line = (_: unknown, i: number) => ({ do: 'draw-line', line: `l${i}`, points: points.slice(0, 2) });
    expect(commands(...Array.from({ length: 100 }, line))).toHaveProperty('ok');
    expect(first(commands(...Array.from({ length: 101 }, line)))).toMatchObject({ found: '101 lines' });
    const thing = (_: unknown, i: number) => ({ do: 'identify', what: `w${i}`, at: { on: 'a', at: 0 } });
    expect(first(commands(...Array.from({ length: 101 }, thing)))).toMatchObject({ found: '101 things' });
    expect(first(commands({ do: 'open-out', about: 'a'.repeat(10_000) })).found.length).toBeLessThan(80);
    expect(
      first(commands({ do: 'label', piece: 'a', name: 'x'.repeat(121), cut: 1, rightSideUp: true })).path,
    ).toBe('commands[0].name');
    expect(first(parseRecipe(' '.repeat(4_000_001)))).toMatchObject({ found: '4000001 characters' });
    expect(first(parseRecipe('['.repeat(2_000_000))).path).toBe('');
    const faults = `{"format":"pin-and-pivot/recipe","version":1,"commands":[{"do":"draw-line","points":[${'[],'.repeat(1_000_000)}1]}]}`;
    expect(problems(parseRecipe(faults)).length).toBeGreaterThan(0);
  });

  it('says in words what a name or a whole number has to be', () => {
    expect(first(commands({ do: 'open-out', about: 'A' })).expected).toMatch(/^a name: lower case letters/);
    expect(first(parse(recipe({ seed: 0.5 }))).expected).toBe('a whole number');
    const label = { do: 'label', piece: 'upper', name: 'a\nb', cut: 1, rightSideUp: true };
    expect(first(commands(label)).expected).toBe('1 to 120 characters on one line');
  });

  it('takes no name that every object has', () => {
    for (const name of ['__proto__', 'constructor', 'toString', 'hasOwnProperty', '']) {
      expect(first(commands({ do: 'identify', what: name, at: { landmark: 'b' } })).path).toBe(
        'commands[0].what',
      );
      expect(first(commands({ do: 'identify', what: 'b', at: { landmark: name } })).path).toBe(
        'commands[0].at.landmark',
      );
      expect(first(parse(recipe({ block: { figure: name } }))).path).toBe('block.figure');
      expect(first(commands({ do: name, about: 'b' })).path).toBe('commands[0].do');
    }
    const text = JSON.stringify(recipe()).replace('"about"', '"__proto__":{"step":"x"},"about"');
    expect(first(parseRecipe(text))).toMatchObject({
      path: 'commands[0].__proto__',
      expected: 'no such key',
    });
    expect(({} as { step?: string }).step).toBeUndefined();
  });

  it('refuses names with line ends or control characters; takes markup as plain text', () => {
    const label = (name: string) =>
      commands({ do: 'label', piece: 'upper', name, cut: 1, rightSideUp: true });
    for (const name of ['a\nb', '\u0000', 'a\u2028b', ''])
      expect(first(label(name)).path).toBe('commands[0].name');
    for (const name of ['<script>alert(1)</script>', 'Façade 🙂', '"quoted"'])
      expect(label(name)).toHaveProperty('ok');
  });

  it('refuses measures that cannot be drafted, each by itself or together', () => {
    const measured = (bust: unknown, waist: unknown, napeToWaist: unknown) =>
      parse(recipe({ block: { measures: { bust, waist, napeToWaist } } }));
    expect(measured(880, 700, 380)).toHaveProperty('ok');
    expect(first(measured('880', 700, 380)).path).toBe('block.measures.bust');
    expect(first(measured(88, 70, 38)).path).toBe('block.measures.bust');
    expect(first(measured(880, 1000, 380))).toMatchObject({ path: 'block.measures.waist', found: '1000' });
    expect(first(parse(recipe({ block: { figure: 'F9' } }))).path).toBe('block.figure');
    expect(first(parse(recipe({ block: {} }))).path).toBe('block');
  });

  it('wants to know the lesson of an attempt, and takes an attempt as a recipe', () => {
    expect(first(parseAttempt(JSON.stringify(recipe())))).toMatchObject({ path: 'lesson', found: 'nothing' });
    const attempt = recipe({ lesson: { id: 'slanted-seam', content: 1 } });
    expect(parse(attempt)).toEqual({ ok: attempt });
    expect(checkAttempt(attempt)).toEqual({ ok: attempt });
    expect(checkAttempt(undefined)).toHaveProperty('problems');
  });
});
