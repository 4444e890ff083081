import * as v from 'valibot';
import { FIGURES, MEASURE_LIMITS } from '../pattern/figures.ts';
import { KINDS } from './commands/index.ts';
import { LIMITS, content, fabric, id, keyed, seed } from './shapes.ts';
import type { Attempt, BlockChoice, Command, Recipe } from './types.ts';

export const FORMAT = 'pin-and-pivot/recipe';
export const VERSION = 1;

type OneOf = v.VariantSchema<'do', v.VariantOptions<'do'>, undefined>;

/** Any command; its `do` says which. */
export const commandSchema = v.variant(
  'do',
  Object.values(KINDS).map((kind) => kind.schema) as unknown as OneOf['options'],
) as unknown as v.GenericSchema<unknown, Command>;

const size = ({ min, max }: { readonly min: number; readonly max: number }) =>
  v.pipe(v.number(), v.minValue(min), v.maxValue(max));

const block = keyed<BlockChoice>({
  figure: v.strictObject({ figure: v.picklist(Object.keys(FIGURES)) }),
  measures: v.strictObject({
    measures: v.strictObject({
      bust: size(MEASURE_LIMITS.bust),
      waist: size(MEASURE_LIMITS.waist),
      napeToWaist: size(MEASURE_LIMITS.napeToWaist),
    }),
  }),
});

const recipeKeys = {
  format: v.literal(FORMAT),
  version: v.literal(VERSION),
  block,
  fabric,
  seed,
  commands: v.pipe(v.array(commandSchema), v.maxLength(LIMITS.commands)),
} as const;

export const lesson = v.strictObject({ id, content });

/** A recipe by itself, or one that was handed in for a lesson. */
export const recipeSchema: v.GenericSchema<unknown, Recipe> = v.strictObject({
  ...recipeKeys,
  lesson: v.exactOptional(lesson),
});

export const attemptSchema: v.GenericSchema<unknown, Attempt> = v.strictObject({ ...recipeKeys, lesson });
