import { fileURLToPath } from 'node:url';
import { ESLint } from 'eslint';
import { describe, expect, test } from 'vitest';

// The rules come from the project's own eslint.config.js; the texts are never written to disk.
// What is held fast here is the project's own rule of layers, so the source of each expectation is its design.
const root = fileURLToPath(new URL('..', import.meta.url));
const eslint = new ESLint({ cwd: root });

async function complaints(
  filePath: string,
  text: string,
): Promise<{ rule: string | null; message: string }[]> {
  const [result] = await eslint.lintText(text, { filePath });
  if (result === undefined) throw new Error(`${filePath} was not linted: is it ignored?`);
  return result.messages.map(({ ruleId, message }) => ({ rule: ruleId, message }));
}

async function rules(filePath: string, text: string): Promise<(string | null)[]> {
  return (await complaints(filePath, text)).map(({ rule }) => rule);
}

const importing = (from: string): string => `import { thing } from '${from}';\nexport const used = thing;\n`;

describe('the order of the layers', () => {
  const order = ['geometry', 'pattern', 'recipe', 'grading', 'lessons', 'machines', 'table'];
  const pairs = order.flatMap((from, i) => order.map((to, j) => ({ from, to, upward: j > i })));

  test.each(pairs.filter(({ upward }) => upward))(
    '$from may not import $to, and the message says why',
    async (pair) => {
      const found = await complaints(`src/lib/${pair.from}/sample.ts`, importing(`../${pair.to}/other.ts`));
      expect(found.map(({ rule }) => rule)).toEqual(['project/layers']);
      expect(found[0]?.message).toContain(`${pair.from} may not import ${pair.to}`);
      expect(found[0]?.message).toContain('Imports point left only');
    },
  );

  test.each(pairs.filter(({ upward }) => !upward))('$from may import $to', async ({ from, to }) => {
    expect(await rules(`src/lib/${from}/sample.ts`, importing(`../${to}/other.ts`))).toEqual([]);
  });

  test.each([
    ['a type import', "import type { A } from '../recipe/types.ts';\nexport type B = A;\n"],
    ['an export from', "export { a } from '../recipe/apply.ts';\n"],
    ['an export of all', "export * from '../recipe/apply.ts';\n"],
    ['a late import', "export const late = () => import('../recipe/apply.ts');\n"],
  ])('%s does not get round it', async (_form, text) => {
    expect(await rules('src/lib/pattern/sample.ts', text)).toContain('project/layers');
  });

  test('a type named inside import() does not get round it', async () => {
    const text = "export type B = import('../recipe/types.ts').Recipe;\n";
    expect(await rules('src/lib/pattern/sample.ts', text)).toContain('project/layers');
  });

  test('a file deeper in a layer belongs to that layer', async () => {
    const text = importing('../../grading/grade.ts');
    expect(await rules('src/lib/pattern/operations/sample.ts', text)).toEqual(['project/layers']);
  });

  test('no layer imports a page, and a page may import every layer', async () => {
    expect(await rules('src/lib/table/sample.ts', importing('../../routes/page.ts'))).toEqual([
      'project/layers',
    ]);
    for (const to of [...order, 'strings', 'progress', 'practice', 'print', 'panels']) {
      expect(await rules('src/routes/sample.ts', importing(`../lib/${to}/other.ts`))).toEqual([]);
    }
  });

  test('an alias is refused where Node runs the file, and cannot hide the direction elsewhere', async () => {
    expect(await rules('src/lib/pattern/sample.ts', importing('$lib/geometry/point.ts'))).toEqual([
      'project/layers',
    ]);
    expect(await rules('src/lib/table/sample.ts', importing('$lib/geometry/point.ts'))).toEqual([]);
  });
});

describe('the command line', () => {
  test('takes the first five layers and the sentences', async () => {
    for (const to of ['geometry', 'pattern', 'recipe', 'grading', 'lessons', 'strings']) {
      expect(await rules('src/cli/sample.ts', importing(`../lib/${to}/other.ts`))).toEqual([]);
    }
  });

  test('takes nothing of the screen', async () => {
    for (const to of ['machines', 'table', 'panels', 'print', 'progress']) {
      expect(await rules('src/cli/sample.ts', importing(`../lib/${to}/other.ts`))).toEqual([
        'project/layers',
      ]);
    }
    expect(await rules('src/cli/sample.ts', importing('xstate'))).toEqual(['project/layers']);
  });

  test('finds nothing of the screen in the sentences it takes', async () => {
    expect(await rules('src/lib/strings/sample.ts', importing('../table/other.ts'))).toEqual([
      'project/layers',
    ]);
    expect(await rules('src/lib/strings/sample.ts', importing('svelte'))).toEqual(['project/layers']);
  });
});

describe('what the first five layers may not know', () => {
  const pure = ['geometry', 'pattern', 'recipe', 'grading', 'lessons'];
  const strangers = ['svelte', 'svelte/store', 'xstate', 'd3-shape', 'd3-zoom', '$app/state', 'node:fs'];

  test.each(pure)('%s imports no package of the screen, the store or Node', async (layer) => {
    for (const name of strangers) {
      expect(await rules(`src/lib/${layer}/sample.ts`, importing(name)), name).toEqual(['project/layers']);
    }
    expect(await rules(`src/lib/${layer}/sample.ts`, importing('robust-predicates'))).toEqual([]);
  });

  test.each(pure)('%s touches no global of one host', async (layer) => {
    for (const name of ['document', 'window', 'localStorage', 'process', 'setTimeout', 'fetch']) {
      const found = await rules(`src/lib/${layer}/sample.ts`, `export const x = ${name};\n`);
      expect(found, name).toEqual(['no-restricted-globals']);
    }
  });

  test('a name of the file itself is not mistaken for such a global', async () => {
    const text =
      'export function f(name: string, location: number): string {\n  return name + location;\n}\n';
    expect(await rules('src/lib/grading/sample.ts', text)).toEqual([]);
  });
});

describe('arithmetic that every engine rounds alike', () => {
  const pure = ['geometry', 'pattern', 'recipe', 'grading'];
  const refused = [
    'sin',
    'cos',
    'tan',
    'asin',
    'acos',
    'atan',
    'atan2',
    'hypot',
    'pow',
    'exp',
    'log',
    'cbrt',
    'random',
  ];

  test.each(pure)('%s may not use what engines round differently', async (layer) => {
    for (const name of refused) {
      const text = `export const x = Math.${name}(1, 2);\n`;
      expect(await rules(`src/lib/${layer}/sample.ts`, text), name).toEqual(['project/deterministic']);
    }
  });

  test.each([
    ['a power sign', 'export const x = (a: number) => a ** 2;\n'],
    ['a power sign that assigns', 'export function f(a: number): number {\n  a **= 2;\n  return a;\n}\n'],
    ['Math taken apart', 'export const { sin } = Math;\n'],
    ['Math under another name', 'const M = Math;\nexport const x = M;\n'],
    ['Math by a computed name', "export const x = Math['sin'](1);\n"],
    ['the clock', 'export const x = Date.now();\n'],
    ['a new date', 'export const x = new Date();\n'],
    ['an order of letters that depends on the machine', "export const x = 'a'.localeCompare('b');\n"],
  ])('%s is refused', async (_form, text) => {
    expect(await rules('src/lib/geometry/sample.ts', text)).toContain('project/deterministic');
  });

  test('square roots, rounding and constants are allowed', async () => {
    const text =
      'export const x = Math.sqrt(2) + Math.abs(-1) + Math.max(1, 2) + Math.floor(1.5) + Math.PI;\n';
    expect(await rules('src/lib/geometry/sample.ts', text)).toEqual([]);
  });

  test('the view may use any of them', async () => {
    expect(await rules('src/lib/table/sample.ts', 'export const x = Math.sin(1) ** 2;\n')).toEqual([]);
  });
});

describe('text from files is never run', () => {
  test('markup from text is refused in components and scripts', async () => {
    const svelte =
      '<script lang="ts">\n  const { text }: { text: string } = $props();\n</script>\n\n{@html text}\n';
    expect(await rules('src/lib/panels/Sample.svelte', svelte)).toContain('svelte/no-at-html-tags');
    const script = 'export const f = (e: Element, t: string) => (e.innerHTML = t);\n';
    expect(await rules('src/lib/panels/sample.ts', script)).toContain('no-restricted-syntax');
  });
});
