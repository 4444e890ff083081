import { fileURLToPath } from 'node:url';
import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';
import { groups } from './src/cli/vite-chunks.ts';

const still = (file: string) => fileURLToPath(new URL(`src/lib/table/still/${file}`, import.meta.url));

export default defineConfig({
  plugins: [sveltekit()],
  resolve: {
    // d3-zoom brings these two for animated zooming, which the table does not do.
    alias: { 'd3-transition': still('transition.ts'), 'd3-interpolate': still('interpolate.ts') },
  },
  build: { reportCompressedSize: false },
  environments: {
    client: { build: { rolldownOptions: { output: { codeSplitting: { groups: groups() } } } } },
  },
  test: {
    environment: 'node',
    setupFiles: ['tests/support/seed.ts'],
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'node_modules/**'],
  },
});
