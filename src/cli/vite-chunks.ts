import type { Rolldown } from 'vite';

type Group = Rolldown.CodeSplittingGroup;
type Context = Parameters<Exclude<Group['name'], string>>[1];

/** What every page needs; what the pages of few bytes need, and all pages; the lesson's table: each by the modules from which it is reached. */
const BASE = /\/client-optimized\/(app|nodes\/0)\.js$|\/runtime\/client\/entry\.js$/;
const SMALL_PAGES = /\/routes\/(lesson\/\[lesson\]\/)?\+(page|error)\.svelte$/;
const PAGES = /\/client-optimized\/nodes\/\d+\.js$/;
const TABLE = /\/panels\/Workbench\.svelte$|\/recipe\/(anchors|snap|commands\/kind)\.ts$/;
/** What is kept on the device, as both the home page and a lesson ask for it; and what the home page alone asks for. */
const DEVICE = /\/progress\/kept-steps\.ts$/;
const STANDING = /\/progress\/(standing|log-db)\.ts$/;
/** What lessons begin with, each one file, of which later phases make use: those named first are taken first. */
// What meets lines is wanted by all but the very first phase, and packs best with the table.
const PHASES = [
  ['block', /\/phases\/block\.ts$/],
  [
    'table',
    /\/geometry\/meet-line\.ts$|\/pattern\/(clear|outcome)\.ts$|\/recipe\/late-connectors\.ts$|\/strings\/early-words\.ts$/,
  ],
  ['words', /\/strings\/tool-words\.ts$/],
  ['legs', /\/tools\/legs\.ts$/],
  ['sewn', /\/phases\/sewn\.ts$/],
  ['line', /\/phases\/line\.ts$/],
] as const;
/** The head of pages on which nothing is worked yet. */
const HEAD = /\/panels\/PageHead\.svelte$/;
/** What makes drills of each kind; what all kinds have in common is one file. */
const MAKERS = /\/panels\/drills\/(moving|finish|fullness|row|princess|line)\.ts$/;
/** The same for kinds that have so little in common with the others that these would count for nothing in what all have. */
const ALONE = /\/panels\/drills\/block\.ts$/;
const MOVING = /\/panels\/drills\/moving\.ts$/;
/** What a drill's page begins with. */
const OPENING = /\/panels\/(drill\.ts|DrillOpening\.svelte)$/;
/** Fields to fill in: the small pages have none, though Svelte's list of all there is names them. */
const FIELDS = /\/svelte\/src\/internal\/client\/dom\/elements\/bindings\/(select|input)\.js$/;

/** These modules only say what there is; without this each is taken for one that does something by being fetched. */
export const treeshake = {
  moduleSideEffects: (id: string): boolean =>
    !/\/node_modules\/(svelte\/src\/(?!.*(disclose-version|flags))|robust-predicates\/|@sveltejs\/kit\/src\/runtime\/app\/state\/)/.test(
      id,
    ),
};

/**
 * Puts the modules that are always fetched together into one file: left alone the bundler makes some thirty small ones of
 * them, which compress worse. Whatever is imported only later stays out.
 */
export function groups(): Group[] {
  const ids: string[] = [];
  let files: Map<string, string> | undefined;
  /** The modules that come with those of `root`, without what they import only later. */
  const reached = (context: Context, root: RegExp): ReadonlySet<string> =>
    reachedFrom(
      context,
      ids.filter((id) => root.test(id)),
    );
  function reachedFrom(context: Context, roots: readonly string[]): ReadonlySet<string> {
    const seen = new Set(roots);
    for (const id of seen) context.getModuleInfo(id)?.importedIds.forEach((next) => seen.add(next));
    return seen;
  }
  /** The file of each module; where several want it, the last one named here has it. */
  function filesOf(context: Context): Map<string, string> {
    const table = reached(context, TABLE);
    // A page must not fetch the table for what it shares with it. What the small pages share (the one for errors comes with each)
    // goes to the base; what only other pages share goes to a file of its own, which the home page does not fetch either.
    const shared = (page: RegExp) => [...reached(context, page)].filter((one) => table.has(one));
    const all = new Map<string, string>();
    const put = (name: string, modules: Iterable<string>): void => {
      for (const id of modules) all.set(id, name);
    };
    // What makes one kind of drill; what moves a dart, with which most kinds begin; and what all have in common, with the opening.
    put('maker-alone', reached(context, ALONE));
    const makers = ids.filter((id) => MAKERS.test(id)).map((id) => reachedFrom(context, [id]));
    const inMakers = (id: string): number => makers.filter((one) => one.has(id)).length;
    makers.forEach((one, i) =>
      put(
        `maker-${i}`,
        [...one].filter((id) => inMakers(id) === 1),
      ),
    );
    put('moving', reached(context, MOVING));
    put(
      'drill',
      [...reached(context, OPENING)].filter((id) => inMakers(id) === 0),
    );
    put(
      'drill',
      makers.flatMap((one) => [...one]).filter((id) => inMakers(id) === makers.length),
    );
    for (const [name, root] of PHASES.toReversed()) put(name, reached(context, root));
    put('standing', reached(context, STANDING));
    put('device', reached(context, DEVICE));
    put('table', table);
    put('shared', shared(PAGES));
    put('shared', reached(context, HEAD));
    put('base', reached(context, BASE));
    put('base', shared(SMALL_PAGES));
    return all;
  }
  const fileOf = (id: string, context: Context): string | undefined => (files ??= filesOf(context)).get(id);
  const seen = (id: string): true => {
    ids.push(id);
    return true;
  };
  const only =
    (...names: readonly string[]): Exclude<Group['name'], string> =>
    (id, context) => {
      const file = fileOf(id, context);
      return file !== undefined && names.includes(file) ? file : undefined;
    };
  return [
    { name: 'fields', test: FIELDS, includeDependenciesRecursively: false, priority: 4 },
    { name: only('base'), test: seen, includeDependenciesRecursively: false, priority: 3 },
    { name: only('shared', 'table'), test: seen, debugName: 'fetched together', priority: 2 },
    { name: fileOf, test: seen, includeDependenciesRecursively: false, priority: 1 },
  ];
}
