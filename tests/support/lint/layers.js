import { dirname, relative, resolve, sep } from 'node:path';

/**
 * The layers of src/lib from left to right; imports point left only. The view folders share the last place.
 * `strings` is left of the other view folders, because the command line reads its sentences.
 */
const ORDER = ['geometry', 'pattern', 'recipe', 'grading', 'lessons', 'machines'];
const VIEW = ['table', 'panels', 'print', 'progress', 'practice'];
const PURE = ORDER.slice(0, 5);

const WHY_PURE =
  'The browser, the command line and a server all run the same code of the first five layers, so they know nothing of Svelte, xstate, d3, storage, the DOM or Node.';
const WHY_ORDER =
  'Imports point left only (geometry < pattern < recipe < grading < lessons < machines < view), so that each layer can be read, tested and replaced without the ones to its right.';
const WHY_CLI =
  'The command line marks exactly what the browser marks and starts fast, so it takes the first five layers and the sentences and nothing of the screen.';

/** Packages each layer may use beside its own files. What is not listed is refused. */
const PACKAGES_PURE = ['robust-predicates', 'valibot'];
const PACKAGES_MACHINES = [...PACKAGES_PURE, 'xstate'];

/**
 * Where a file stands: a folder of src/lib, 'routes', 'cli', 'lib' (a file directly in src/lib), 'tests', or
 * undefined for anything else.
 * @param {string} file path from the project's top, with forward slashes
 * @returns {string | undefined}
 */
function placeOf(file) {
  const parts = file.split('/');
  if (parts[0] === 'tests') return 'tests';
  if (parts[0] !== 'src') return undefined;
  if (parts[1] === 'lib') return parts.length > 3 ? parts[2] : 'lib';
  return parts[1];
}

/**
 * The places of src that a file at `from` may import from; undefined where any will do.
 * @param {string} from
 * @returns {{ places: string[], why: string } | undefined}
 */
function allowedPlaces(from) {
  const rank = ORDER.indexOf(from);
  if (rank >= 0) return { places: ORDER.slice(0, rank + 1), why: WHY_ORDER };
  if (from === 'strings') return { places: [...PURE, 'strings'], why: `${WHY_ORDER} ${WHY_CLI}` };
  if (VIEW.includes(from)) return { places: [...ORDER, ...VIEW, 'strings', 'lib'], why: WHY_ORDER };
  if (from === 'cli') return { places: [...PURE, 'strings', 'cli'], why: WHY_CLI };
  if (from === 'routes') return { places: [...ORDER, ...VIEW, 'strings', 'lib', 'routes'], why: WHY_ORDER };
  return undefined;
}

/**
 * @param {string} from
 * @param {string} name what is imported, not a relative path
 * @returns {string | undefined} why it is refused
 */
function refusedPackage(from, name) {
  const listed = (/** @type {string[]} */ list) =>
    list.some((allowed) => name === allowed || name.startsWith(allowed + '/'));
  if (PURE.includes(from) || from === 'strings') return listed(PACKAGES_PURE) ? undefined : WHY_PURE;
  if (from === 'machines') {
    return listed(PACKAGES_MACHINES)
      ? undefined
      : 'A machine is states and names only; what draws, stores or reads the clock is handed to it from outside.';
  }
  if (from === 'cli') return /^(svelte|xstate|@xstate|d3-|@sveltejs|\$app)/.test(name) ? WHY_CLI : undefined;
  return undefined;
}

/**
 * The rule that keeps the layers of src/lib in order. Works on import and export declarations, type imports, and
 * import() with a fixed text.
 * @type {import('eslint').Rule.RuleModule}
 */
export const layers = {
  meta: {
    type: 'problem',
    docs: { description: 'imports between the layers of src/lib point left only' },
    messages: {
      order: '{{from}} may not import {{to}}. {{why}}',
      package: "{{from}} may not import '{{name}}'. {{why}}",
      alias:
        "{{from}} may not import '{{name}}' by alias. Write the relative path with its .ts ending: Node, tsx and Vite all run these files, and only Vite knows the alias.",
    },
    schema: [],
  },
  create(context) {
    const root = context.cwd;
    const file = relative(root, context.filename).split(sep).join('/');
    const from = placeOf(file);
    if (from === undefined || from === 'tests') return {};

    /** @param {import('estree').Node | null | undefined} source */
    function check(source) {
      if (source?.type !== 'Literal' || typeof source.value !== 'string') return;
      const name = source.value;
      const at = /** @type {string} */ (from);
      if (/^\$lib(\/|$)/.test(name) && [...ORDER, 'strings', 'cli'].includes(at)) {
        context.report({ node: source, messageId: 'alias', data: { from: at, name } });
        return;
      }
      if (!/^(\.|\$lib(\/|$))/.test(name)) {
        const why = refusedPackage(at, name);
        if (why !== undefined)
          context.report({ node: source, messageId: 'package', data: { from: at, name, why } });
        return;
      }
      const target = name.startsWith('$lib')
        ? name.replace('$lib', 'src/lib')
        : relative(root, resolve(dirname(context.filename), name))
            .split(sep)
            .join('/');
      const to = placeOf(target);
      const allowed = allowedPlaces(at);
      // Content outside src (the lesson folders) belongs to no layer.
      if (allowed === undefined || to === undefined) return;
      if (!allowed.places.includes(to)) {
        context.report({ node: source, messageId: 'order', data: { from: at, to, why: allowed.why } });
      }
    }

    return {
      ImportDeclaration: (node) => check(node.source),
      ExportNamedDeclaration: (node) => check(node.source),
      ExportAllDeclaration: (node) => check(node.source),
      ImportExpression: (node) => check(node.source),
      /** @param {any} node `import('./x.ts').Type`, which the plain syntax tree does not know */
      TSImportType: (node) => check(node.source ?? node.argument?.literal),
    };
  },
};
