import * as v from 'valibot';
import { unfitMeasure } from '../pattern/figures.ts';
import { FORMAT, VERSION, attemptSchema, recipeSchema } from './file-schema.ts';
import { jsonFault } from './json-fault.ts';
import { type Problem, problemOf, shortly } from './problem.ts';
import { LIMITS } from './shapes.ts';
import type { Attempt, Recipe } from './types.ts';

export type Parsed<T> = { readonly ok: T } | { readonly problems: readonly Problem[] };

/** No more problems than a person will read. */
const MOST = 20;
/** Characters up to which a faulty file is searched to its end. */
const SMALL = 300_000;

/**
 * Reads a recipe file (an attempt is one too). All or nothing: either the whole recipe, or what is wrong with it, at most
 * 20 problems. Never throws, whatever the text.
 */
export const parseRecipe = (text: string): Parsed<Recipe> => parse(text, recipeSchema);

/** Reads an attempt file: a recipe that says which lesson it was made for. As `parseRecipe`. */
export const parseAttempt = (text: string): Parsed<Attempt> => parse(text, attemptSchema);

/** Checks a recipe that is already data, e.g. from storage. As `parseRecipe`. */
export const checkRecipe = (data: unknown): Parsed<Recipe> => check(data, recipeSchema);

/** Checks an attempt that is already data, e.g. from storage. As `parseRecipe`. */
export const checkAttempt = (data: unknown): Parsed<Attempt> => check(data, attemptSchema);

const one = (path: string, expected: string, found: string) => ({ problems: [{ path, expected, found }] });

function parse<T extends Recipe>(text: string, schema: v.GenericSchema<unknown, T>): Parsed<T> {
  if (text.length > LIMITS.text)
    return one('', `at most ${LIMITS.text} characters`, `${text.length} characters`);
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    const fault = jsonFault(text);
    if (fault === undefined) return one('', 'JSON', 'a text that is none');
    return one('', fault.expected, `${fault.found} at line ${fault.line}, column ${fault.column}`);
  }
  return check(data, schema, text.length <= SMALL);
}

function check<T extends Recipe>(
  data: unknown,
  schema: v.GenericSchema<unknown, T>,
  small = false,
): Parsed<T> {
  if (typeof data !== 'object' || data === null || Array.isArray(data))
    return one('', 'an object', shortly(data));
  const { format, version, commands } = data as Record<string, unknown>;
  if (format !== FORMAT) return one('format', JSON.stringify(FORMAT), shortly(format));
  if (typeof version === 'number' && version > VERSION)
    return one('version', `${VERSION}`, `${shortly(version)}, from a newer version of Pin & Pivot`);
  // Before the long check, so that a huge list is refused at once.
  if (Array.isArray(commands) && commands.length > LIMITS.commands)
    return one('commands', `at most ${LIMITS.commands} entries`, `${commands.length} entries`);
  const first = v.safeParse(schema, data, { abortEarly: true });
  if (first.success) return usable(first.output);
  // Only then, and only for a file of ordinary size, what else is wrong: a hostile one could hold a million faults.
  const issues = small ? (v.safeParse(schema, data).issues ?? first.issues) : first.issues;
  return { problems: issues.slice(0, MOST).map(problemOf) };
}

/** What the schema cannot say: measures that do not go together, and more drawing than can be done in a reasonable time. */
function usable<T extends Recipe>(recipe: T): Parsed<T> {
  let points = 0;
  const lines = new Set<string>();
  const things = new Set<string>();
  for (const command of recipe.commands) {
    if (command.do === 'identify') things.add(command.what);
    if (command.do === 'draw-slash' || command.do === 'pivot') lines.add(command.slash);
    if (command.do !== 'draw-line' && command.do !== 'draw-curve') continue;
    points += command.points.length;
    lines.add(command.line);
  }
  if (points > LIMITS.allPoints)
    return one('commands', `at most ${LIMITS.allPoints} points in all lines`, `${points} points`);
  if (lines.size > LIMITS.ids) return one('commands', `at most ${LIMITS.ids} lines`, `${lines.size} lines`);
  if (things.size > LIMITS.ids)
    return one('commands', `at most ${LIMITS.ids} things identified`, `${things.size} things`);
  const { block } = recipe;
  const unfit = 'measures' in block ? unfitMeasure(block.measures) : undefined;
  if (unfit === undefined || !('measures' in block)) return { ok: recipe };
  return one(
    `block.measures.${unfit}`,
    'a measure the block can be drafted with beside the others',
    shortly(block.measures[unfit]),
  );
}
