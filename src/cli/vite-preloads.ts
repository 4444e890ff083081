import type { Plugin, Rolldown } from 'vite';

/** What a first step waits for, by the names of files in `vite-chunks.ts`: phases of commands, and what makes drills. */
const AT_ONCE = /^(block|legs|line|sewn|maker-\w+)$/;
/** What comes with the first mark of a drill, in files that happen to have such names too. */
const WHOLE = /\/drills\/whole\//;
/** Pages that are gone to. */
const PAGE = /\/nodes\/\d+\./;

/**
 * Which files are asked for together with one that is fetched later, before it is there to say what it needs. Beside every place that fetches
 * something such a list is code of its own: together they were 2.5 KB of every lesson. So only pages and what the first step waits for have
 * one, without what is there already; all else the service worker has taken by the time it is wanted.
 */
export function preloads(): {
  readonly plugin: Plugin;
  readonly resolveDependencies: (file: string, deps: string[], context: { hostId: string }) => string[];
} {
  let bundle: Rolldown.OutputBundle = {};
  /** The file with all that it imports. */
  function closure(file: string): ReadonlySet<string> {
    const seen = new Set([file]);
    for (const one of seen) {
      const chunk = bundle[one];
      if (chunk?.type === 'chunk') chunk.imports.forEach((next) => seen.add(next));
    }
    return seen;
  }
  return {
    plugin: {
      name: 'what-comes-with-a-file',
      enforce: 'pre',
      generateBundle(_, made) {
        if (this.environment.name === 'client') bundle = made;
      },
    },
    resolveDependencies(file, deps, { hostId }) {
      const chunk = bundle[file];
      const early =
        chunk?.type === 'chunk' && AT_ONCE.test(chunk.name) && !WHOLE.test(chunk.facadeModuleId ?? '');
      if (!PAGE.test(file) && !early) return [];
      const there = closure(hostId);
      return deps.filter((one) => !there.has(one));
    },
  };
}
