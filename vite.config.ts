import { fileURLToPath } from 'node:url';
import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';
import { groups, treeshake } from './src/cli/vite-chunks.ts';
import { preloads } from './src/cli/vite-preloads.ts';

const still = (file: string) => fileURLToPath(new URL(`src/lib/table/still/${file}`, import.meta.url));

const { plugin, resolveDependencies } = preloads();

export default defineConfig({
  plugins: [sveltekit(), plugin],
  resolve: {
    // d3-zoom brings the first two for animated zooming, which the table does not do, and of the third uses very little.
    alias: {
      'd3-transition': still('transition.ts'),
      'd3-interpolate': still('interpolate.ts'),
      'd3-selection': still('selection.ts'),
    },
  },
  build: { reportCompressedSize: false, modulePreload: { resolveDependencies } },
  environments: {
    client: {
      build: {
        rolldownOptions: {
          // A page may give more than it has to, so that what it shares with others can lie in one file.
          preserveEntrySignatures: 'allow-extension',
          treeshake,
          output: { codeSplitting: { groups: groups() } },
        },
      },
    },
  },
  test: {
    environment: 'node',
    // No test is about time; on a busy machine the longest take some ten seconds.
    testTimeout: 60_000,
    setupFiles: ['tests/support/seed.ts'],
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'node_modules/**'],
  },
});
