import type { Rolldown } from 'vite';

type Group = Rolldown.CodeSplittingGroup;
type Context = Parameters<Exclude<Group['name'], string>>[1];

/** What every page needs, what a page shows first, and the lesson's table: each by the modules from which it is reached. */
const BASE = /\/client-optimized\/(app|nodes\/0)\.js$|\/runtime\/client\/entry\.js$/;
const PAGES = /\/client-optimized\/nodes\/\d+\.js$/;
const TABLE = /\/panels\/Workbench\.svelte$/;

/**
 * Puts the modules that are always fetched together into one file: left alone the bundler makes some thirty small ones of
 * them, which compress worse. Whatever is imported only later stays out.
 */
export function groups(): Group[] {
  const ids: string[] = [];
  let files: Map<string, string> | undefined;
  /** The modules that come with those of `root`, without what they import only later. */
  function reached(context: Context, root: RegExp): ReadonlySet<string> {
    const seen = new Set(ids.filter((id) => root.test(id)));
    for (const id of seen) context.getModuleInfo(id)?.importedIds.forEach((next) => seen.add(next));
    return seen;
  }
  function fileOf(id: string, context: Context): string | undefined {
    if (!files) {
      const base = reached(context, BASE);
      const pages = reached(context, PAGES);
      const table = reached(context, TABLE);
      // What the table shares with a page goes to the base: the page must not fetch the table for it.
      const both = [...table].filter((one) => pages.has(one));
      files = new Map([
        ...[...table].map((one) => [one, 'table'] as const),
        ...[...base, ...both].map((one) => [one, 'base'] as const),
      ]);
    }
    return files.get(id);
  }
  return [
    {
      name: fileOf,
      debugName: 'fetched together',
      test: (id) => {
        ids.push(id);
        return true;
      },
    },
  ];
}
