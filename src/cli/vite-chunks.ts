import type { Rolldown } from 'vite';

type Group = Rolldown.CodeSplittingGroup;
type Context = Parameters<Exclude<Group['name'], string>>[1];

/** What every page needs; what the pages of few bytes need, and all pages; the lesson's table: each by the modules from which it is reached. */
const BASE = /\/client-optimized\/(app|nodes\/0)\.js$|\/runtime\/client\/entry\.js$/;
const SMALL_PAGES = /\/routes\/(lesson\/\[lesson\]\/)?\+(page|error)\.svelte$/;
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
      const small = reached(context, SMALL_PAGES);
      const pages = reached(context, PAGES);
      const table = reached(context, TABLE);
      // A page must not fetch the table for what it shares with it. What the small pages share (the one for errors comes with each)
      // goes to the base; what only other pages share goes to a file of its own, which the home page does not fetch either.
      const shared = (page: ReadonlySet<string>) => [...table].filter((one) => page.has(one));
      files = new Map([
        ...[...table].map((one) => [one, 'table'] as const),
        ...shared(pages).map((one) => [one, 'shared'] as const),
        ...[...base, ...shared(small)].map((one) => [one, 'base'] as const),
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
