import { readFileSync, writeFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as v from 'valibot';
import { KINDS } from '../../src/lib/recipe/commands/index.ts';
import { recipeSchema } from '../../src/lib/recipe/file-schema.ts';
import { parseRecipe } from '../../src/lib/recipe/parse.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import { DESCRIPTIONS } from './descriptions.ts';
import { publishedSchema } from './json-schema.ts';
import { sampleAttempt } from './sample.ts';

const at = (name: string) => new URL(`../../static/${name}`, import.meta.url);
const schemaText = `${JSON.stringify(publishedSchema(), null, 2)}\n`;
// `UPDATE_SCHEMA=1 npx vitest run tests/recipe/schema.test.ts` writes the published files anew.
if (process.env['UPDATE_SCHEMA']) {
  writeFileSync(at('recipe.schema.json'), schemaText);
  const help = [{ step: 'style-line', hints: 1, shown: false }];
  writeFileSync(at('example.recipe.json'), toText({ ...sampleAttempt('F2', 'woven'), help }));
}

const published = JSON.parse(readFileSync(at('recipe.schema.json'), 'utf8')) as object;
// Outside reference: ajv, an independent reader of JSON Schema 2020-12.
const accepts = new Ajv2020({ strict: true, allErrors: false }).compile(published);
const reads = (data: unknown): boolean => v.safeParse(recipeSchema, data).success;

/** One of each command, with everything that may be left out. */
const ONE_OF_EACH: readonly Record<string, unknown>[] = [
  { do: 'identify', step: 's', what: 'bust-point', at: { landmark: 'right/bust-point', dx: 1, dy: -2.5 } },
  { do: 'read', what: 'intake', value: 70 },
  { do: 'open-out', about: 'centre-front' },
  {
    do: 'draw-line',
    line: 'line',
    points: [
      { on: 'right/shoulder', at: 0.5 },
      { inside: 'front', weights: [0.2, 0.3, 0.5] },
      { landmark: 'x' },
    ],
  },
  {
    do: 'draw-curve',
    line: 'line',
    points: [
      { on: 'right/shoulder', at: 0.5 },
      { inside: 'front', weights: [0.2, 0.3, 0.5] },
      { landmark: 'x' },
      { on: 'left/side-lower', at: 0.5 },
    ],
    kinks: 1,
  },
  { do: 'notch', id: 'n1', line: 'line', at: 0.25 },
  { do: 'remove-notch', id: 'n1' },
  { do: 'extend-dart', dart: 'right', to: { landmark: 'right/bust-point' } },
  { do: 'connect', dart: 'right', line: 'line', at: 0.4 },
  { do: 'slash', dart: 'right', line: 'line', from: 'start', past: 0 },
  { do: 'turn', dart: 'right', part: 'freed', about: { landmark: 'b' }, by: { until: 'legs-meet' } },
  { do: 'turn', dart: 'right', part: 'rest', about: { landmark: 'b' }, by: { angle: -0.3 } },
  {
    do: 'turn',
    dart: 'right',
    into: 'slash',
    part: 'freed',
    about: { landmark: 'b' },
    by: { share: 0.5 },
  },
  { do: 'back-off', dart: 'slash', by: 19 },
  { do: 'true-legs', dart: 'slash' },
  { do: 'cap', dart: 'slash', fold: 'side' },
  { do: 'fullness', dart: 'slash', as: 'gathers', before: 30, after: 30 },
  { do: 'fullness', dart: 'slash', as: 'tucks', before: 30, after: 30, tucks: 3 },
  { do: 'part-at-darts', darts: ['slash', 'right'] },
  { do: 'smooth-seam', piece: 'front-centre', at: 'right/bust-point', reach: 40 },
  { do: 'notch-seam', id: 'n1', line: 'princess', off: -45 },
  { do: 'draw-slash', slash: 'slash', from: { on: 'right/shoulder', at: 0.5 }, to: { landmark: 'b' } },
  {
    do: 'draw-slash',
    slash: 'slash',
    from: { on: 'right/shoulder', at: 0.5 },
    via: { landmark: 'b', dx: -19, dy: 0 },
    to: { landmark: 'b' },
  },
  { do: 'cut-slash', slash: 'slash', past: 0 },
  {
    do: 'pivot',
    dart: 'right',
    slash: 'slash',
    from: { on: 'right/armhole', at: 0.5 },
    about: { landmark: 'b' },
    by: { until: 'legs-meet' },
    part: 'freed',
  },
  { do: 'separate', line: 'line' },
  { do: 'place', piece: 'upper', dx: 10, dy: -20, angle: 0.5 },
  { do: 'overlay', piece: 'upper' },
  { do: 'copy', as: 'woven' },
  { do: 'bridge', piece: 'lower', dart: 'right', before: 25, after: 25 },
  { do: 'ease', piece: 'lower', dart: 'right', from: 'n1', to: 'n2' },
  { do: 'take-out', piece: 'lower@woven', dart: 'right', end: 'start', amount: 'measured' },
  { do: 'take-out', piece: 'lower@woven', dart: 'right', end: 'end', amount: 9.7 },
  { do: 'true', edge: 'right/shoulder', as: 'woven' },
  { do: 'renotch', piece: 'lower@woven', notch: 'n1', at: 120 },
  { do: 'allow', piece: 'lower', group: 'style-line', width: 10 },
  {
    do: 'corner',
    piece: 'lower',
    before: 'style-line',
    after: 'right/shoulder',
    form: 'reflect',
    first: 'style-line',
  },
  { do: 'carry-notches', piece: 'lower' },
  { do: 'label', piece: 'lower', name: 'Lower front', cut: 1, rightSideUp: true },
  { do: 'grain', piece: 'lower', at: { inside: 'lower', weights: [1, 0, 0] }, angle: 0 },
  { do: 'walk', seam: 'style-line', along: 'seam', says: 'eased', as: 'knit' },
];

const whole = {
  format: 'pin-and-pivot/recipe',
  version: 1,
  lesson: { id: 'slanted-seam', content: 1 },
  help: [{ step: 'style-line', hints: 2, shown: true }],
  block: { measures: { bust: 880, waist: 700, napeToWaist: 380 } },
  fabric: 'knit',
  seed: 1,
  commands: ONE_OF_EACH,
};

/** Every place in a document, as the keys that lead to it. */
function places(value: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  const here = path.length === 0 ? [] : [path];
  if (typeof value !== 'object' || value === null) return here;
  return [
    ...here,
    ...Object.entries(value).flatMap(([key, inner]) =>
      places(inner, [...path, Array.isArray(value) ? Number(key) : key]),
    ),
  ];
}

/** A copy of the document, changed at one place. */
function changed(
  document: unknown,
  path: readonly (string | number)[],
  how: 'set' | 'drop' | 'add',
  put: unknown,
) {
  const copy = structuredClone(document);
  let inside = copy as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) inside = inside[key] as Record<string | number, unknown>;
  const key = path[path.length - 1]!;
  if (how === 'set') inside[key] = put;
  else if (how === 'drop') {
    if (Array.isArray(inside)) inside.splice(key as number, 1);
    else delete inside[key];
  } else if (Array.isArray(inside)) inside.push(put);
  else inside[typeof put === 'string' ? put : 'more'] = put;
  return copy;
}

const strange = fc.oneof(
  fc.jsonValue({ maxDepth: 1 }),
  fc.constantFrom<unknown>(...[0, -0, 1, 2, 1.5, -1, 7, 200, 201, 1e4, 1e5, 4294967295, 1e308, 1000, 1001]),
  fc.constantFrom<unknown>(
    '',
    'a',
    'A',
    'constructor',
    'at',
    'step',
    'measured',
    'start',
    'knit',
    'legs-meet',
    '🙂',
  ),
  fc.constantFrom<unknown>(
    'x'.repeat(80),
    'x'.repeat(81),
    '🙂'.repeat(120),
    '🙂'.repeat(121),
    'a\u2028',
    'a\u007f',
  ),
  fc.constantFrom<unknown>(
    { on: 'a', at: 0 },
    { landmark: 'a' },
    { landmark: 'a', on: 'b', at: 0 },
    { figure: 'F1' },
  ),
  fc.constantFrom<unknown>(
    Array(65).fill(0),
    Array(64).fill(0),
    Array(201).fill({ landmark: 'a' }),
    [],
    {},
    null,
  ),
  fc.constantFrom<unknown>(...ONE_OF_EACH),
);

describe('the published schema', () => {
  it('is made from the schema that reads files', () => {
    expect(readFileSync(at('recipe.schema.json'), 'utf8')).toBe(schemaText);
  });

  it('describes every command, and describes nothing that is not there', () => {
    const defs = (published as { $defs: Record<string, { description?: string }> }).$defs;
    for (const name of Object.keys(KINDS)) expect(defs[name]?.description, name).toBeTruthy();
    const text = JSON.stringify(published);
    for (const [path, words] of Object.entries(DESCRIPTIONS))
      expect(text.includes(JSON.stringify(words)), path).toBe(true);
  });

  it('takes one of each command, as the reader does', () => {
    expect([...new Set(ONE_OF_EACH.map((c) => c['do']))].sort()).toEqual(Object.keys(KINDS).sort());
    expect(accepts(whole), JSON.stringify(accepts.errors)).toBe(true);
    expect(reads(whole)).toBe(true);
  });

  it('agrees with the reader about every document: each place dropped, or something strange put in it', () => {
    const all = places(whole);
    for (const path of all) {
      const dropped = changed(whole, path, 'drop', undefined);
      expect(accepts(dropped), path.join('.')).toBe(reads(dropped));
    }
    let taken = 0;
    fc.assert(
      fc.property(fc.constantFrom(...all), fc.constantFrom('set', 'add'), strange, (path, how, put) => {
        const document = changed(whole, path, how, put);
        const ours = reads(document);
        if (ours) taken++;
        expect(accepts(document), JSON.stringify({ path, how, put })).toBe(ours);
      }),
      { numRuns: 3000 },
    );
    // The comparison is worth something only when both answers occur.
    expect(taken).toBeGreaterThan(100);
    expect(taken).toBeLessThan(2900);
  }, 120_000);
});

describe('the example', () => {
  const text = readFileSync(at('example.recipe.json'), 'utf8');

  it('is taken by the schema, and every command in it can be followed', () => {
    expect(accepts(JSON.parse(text)), JSON.stringify(accepts.errors)).toBe(true);
    const parsed = parseRecipe(text);
    if (!('ok' in parsed)) throw new Error(JSON.stringify(parsed.problems));
    const { work, unfollowed } = replay(parsed.ok);
    expect(unfollowed).toEqual([]);
    expect(work.pieces.map((p) => p.id)).toContain('lower@woven');
  });
});
