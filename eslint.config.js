import js from '@eslint/js';
import { defineConfig, globalIgnores } from 'eslint/config';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';
import { deterministic } from './tests/support/lint/deterministic.js';
import { layers } from './tests/support/lint/layers.js';

const PURE = ['geometry', 'pattern', 'recipe', 'grading', 'lessons'].map((name) => `src/lib/${name}/**/*.ts`);

/** Globals of a host (DOM, Node, timers, network, clock, chance) that the language itself does not have. */
const harmless = ['TextDecoder', 'TextEncoder', 'console', 'structuredClone'];
const hostGlobals = Object.keys({ ...globals.browser, ...globals.node }).filter(
  (name) => !(name in globals.builtin) && !harmless.includes(name),
);

export default defineConfig(
  globalIgnores(['build/', '.svelte-kit/', 'node_modules/', 'test-results/', 'playwright-report/']),
  js.configs.recommended,
  ts.configs.recommended,
  svelte.configs.recommended,
  {
    plugins: { project: { rules: { layers, deterministic } } },
    languageOptions: { globals: { ...globals.browser, ...globals.node } },
    rules: {
      // The compiler knows every name; this rule does not know types.
      'no-undef': 'off',
      'project/layers': 'error',
      eqeqeq: 'error',
      'no-eval': 'error',
      'no-implied-eval': 'error',
      'no-new-func': 'error',
      'prefer-const': 'error',
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'no-restricted-syntax': [
        'error',
        {
          selector:
            'MemberExpression[property.name=/^(innerHTML|outerHTML|insertAdjacentHTML|srcdoc)$/], CallExpression[callee.property.name=/^(write|writeln)$/][callee.object.name="document"]',
          message: 'Text from files is never run as markup. Make the nodes, or let Svelte write the text.',
        },
      ],
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: {
      parserOptions: { extraFileExtensions: ['.svelte'], parser: ts.parser, svelteConfig },
    },
    // The plugin's own form of the rule knows that props and derived values are declared with let.
    rules: { 'prefer-const': 'off', 'svelte/prefer-const': 'error' },
  },
  {
    files: PURE,
    rules: {
      'project/deterministic': 'error',
      'no-console': 'error',
      'no-restricted-globals': [
        'error',
        ...hostGlobals.map((name) => ({
          name,
          message:
            'The first five layers run alike in the browser, on the command line and on a server: no DOM, no Node, no timers, no network.',
        })),
      ],
    },
  },
  {
    files: ['src/lib/machines/**/*.ts', 'src/lib/strings/**/*.ts'],
    rules: { 'no-console': 'error' },
  },
  {
    files: ['src/lib/machines/**/*.ts', 'src/lib/practice/**/*.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...['document', 'window', 'localStorage', 'indexedDB', 'Date', 'performance', 'crypto'].map(
          (name) => ({
            name,
            message:
              'Machines and the practice rules get clocks, storage and chance from outside, so that tests can hand them in.',
          }),
        ),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Chance comes in from outside, as a seed.' },
      ],
    },
  },
);
