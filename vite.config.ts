import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';
import { groups, treeshake } from './src/cli/vite-chunks.ts';
import { preloads } from './src/cli/vite-preloads.ts';

const { plugin, resolveDependencies } = preloads();

export default defineConfig({
  plugins: [sveltekit(), plugin],
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
