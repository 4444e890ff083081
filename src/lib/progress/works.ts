import * as v from 'valibot';
import { checkRecipe } from '../recipe/parse.ts';
import { problemOf, type Problem } from '../recipe/problem.ts';
import type { Measures } from '../pattern/block.ts';
import type { Recipe } from '../recipe/types.ts';

/** A work of the free bench as it is kept on the device. */
export interface KeptWork {
  readonly id: string;
  /** As the learner called it; empty while it has no name. */
  readonly name: string;
  /** When it was last worked on, ms since 1970. */
  readonly at: number;
  /** It was put in the bin, and can be taken out again. */
  readonly binned: boolean;
  readonly recipe: Recipe;
  /** The own measures that it lay on before it was laid on a figure. */
  readonly own?: Measures;
}

export type ParsedWork = { readonly ok: KeptWork } | { readonly problems: readonly Problem[] };

/** No longer than fits on a label. */
export const LONGEST_NAME = 80;

const schema = v.strictObject({
  format: v.literal('pin-and-pivot/work'),
  version: v.literal(1),
  id: v.pipe(v.string(), v.regex(/^[a-z0-9-]{1,60}$/, 'a name of lower case letters, digits and -')),
  name: v.pipe(v.string(), v.maxLength(LONGEST_NAME)),
  at: v.pipe(v.number(), v.minValue(0), v.maxValue(8.64e15)),
  binned: v.boolean(),
  recipe: v.unknown(),
  own: v.optional(v.unknown()),
});

/** A name as it is kept: on one line, without spaces around it, and short enough for a label. */
export const asName = (typed: string): string =>
  [...typed.replace(/\s+/g, ' ').trim()].slice(0, LONGEST_NAME / 2).join('');

/** Text of a kept work, ready to be stored. Numbers come back from it with the same bits. */
export const workToText = (work: KeptWork): string =>
  JSON.stringify({ format: 'pin-and-pivot/work', version: 1, ...work });

/** Reads a kept work. Its recipe goes through the same parser as a file from outside; nothing is half-loaded. */
export function parseWork(text: string): ParsedWork {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    return { problems: [{ path: '', expected: 'JSON', found: String(error).slice(0, 120) }] };
  }
  const result = v.safeParse(schema, raw);
  if (!result.success) return { problems: result.issues.map(problemOf) };
  const { id, name, at, binned, recipe, own } = result.output;
  const parsed = checkRecipe(recipe);
  if ('problems' in parsed)
    return {
      problems: parsed.problems.map((problem) => ({
        ...problem,
        path: problem.path ? `recipe.${problem.path}` : 'recipe',
      })),
    };
  const kept = { id, name, at, binned, recipe: parsed.ok };
  if (own === undefined) return { ok: kept };
  // Measures are what a block of them is drafted from, whoever reads them.
  const { commands: _, ...bare } = parsed.ok;
  const on = checkRecipe({ ...bare, block: { measures: own }, commands: [] });
  if ('problems' in on)
    return {
      problems: on.problems.map((problem) => ({
        ...problem,
        path: problem.path.replace(/^block(\.measures)?/, 'own'),
      })),
    };
  return 'measures' in on.ok.block ? { ok: { ...kept, own: on.ok.block.measures } } : { ok: kept };
}
