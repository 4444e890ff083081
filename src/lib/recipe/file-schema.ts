import * as v from 'valibot';
import { FIGURES, MEASURE_LIMITS } from '../pattern/figures.ts';
import { KINDS } from './commands/index.ts';
import type { CommandKind } from './commands/kind.ts';
import { FORMS, LIMITS, base, content, fabric, id, keyed, seed } from './shapes.ts';
import type { Attempt, BlockChoice, Command, Recipe } from './types.ts';

export const FORMAT = 'pin-and-pivot/recipe';
export const VERSION = 1;

/** The schema of one key of a command. */
function shapeOf(form: string | readonly string[]): v.GenericSchema {
  if (typeof form !== 'string') return v.picklist(form);
  const shape = FORMS[form.replace('?', '') as keyof typeof FORMS];
  return form.endsWith('?') ? v.exactOptional(shape) : shape;
}

/** The schema of a kind of command: its `do`, the step, and the keys it has for itself. */
export function schemaOf<C extends Command>({ name, keys }: CommandKind<C>): v.GenericSchema<unknown, C> {
  const own = Object.entries<string | readonly string[]>(keys).map(([key, form]) => [key, shapeOf(form)]);
  return v.strictObject({ ...base(name), ...Object.fromEntries(own) }) as unknown as v.GenericSchema<
    unknown,
    C
  >;
}

type OneOf = v.VariantSchema<'do', v.VariantOptions<'do'>, undefined>;

/** Any command; its `do` says which. */
export const commandSchema = v.variant(
  'do',
  Object.values(KINDS).map((kind) =>
    schemaOf(kind as unknown as CommandKind<Command>),
  ) as unknown as OneOf['options'],
) as unknown as v.GenericSchema<unknown, Command>;

const size = ({ min, max }: { readonly min: number; readonly max: number }) =>
  v.pipe(v.number(), v.minValue(min), v.maxValue(max));

const form = v.exactOptional(v.picklist(['side', 'two-dart', 'waist']));

const block = keyed<BlockChoice>({
  figure: v.strictObject({ figure: v.picklist(Object.keys(FIGURES)), form }),
  measures: v.strictObject({
    measures: v.strictObject({
      bust: size(MEASURE_LIMITS.bust),
      waist: size(MEASURE_LIMITS.waist),
      napeToWaist: size(MEASURE_LIMITS.napeToWaist),
    }),
    form,
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

const help = v.exactOptional(
  v.pipe(
    v.array(
      v.strictObject({
        step: id,
        hints: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(100)),
        shown: v.boolean(),
      }),
    ),
    v.maxLength(100),
  ),
);

/** A recipe by itself, or one that was handed in for a lesson. */
export const recipeSchema: v.GenericSchema<unknown, Recipe> = v.strictObject({
  ...recipeKeys,
  lesson: v.exactOptional(lesson),
  help,
});

export const attemptSchema: v.GenericSchema<unknown, Attempt> = v.strictObject({
  ...recipeKeys,
  lesson,
  help,
});
