import adapter from '@sveltejs/adapter-static';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** @type {import('@sveltejs/kit').Config} */
const config = {
  preprocess: vitePreprocess(),
  kit: {
    adapter: adapter({ pages: 'build', assets: 'build', fallback: '404.html', strict: true }),
    // Relative links: the built folder works from any path of any static host.
    paths: { relative: true },
    // Tests, tools and the command line import with the extension spelled out, as Node does.
    typescript: {
      config(tsconfig) {
        tsconfig.include = [
          ...tsconfig.include,
          '../playwright.config.ts',
          '../svelte.config.js',
          '../eslint.config.js',
        ];
        return tsconfig;
      },
    },
    csp: {
      mode: 'hash',
      directives: {
        'default-src': ['self'],
        'script-src': ['self'],
        'style-src': ['self', 'unsafe-inline'],
        'img-src': ['self', 'data:', 'blob:'],
        'connect-src': ['self'],
        'worker-src': ['self'],
        'manifest-src': ['self'],
        'object-src': ['none'],
        'base-uri': ['self'],
        'form-action': ['none'],
      },
    },
  },
};

export default config;
