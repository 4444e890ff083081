import * as v from 'valibot';
import type { Forms } from './commands/kind.ts';
import type { Anchor, Fabric, TurnBy } from './types.ts';

/** Bounds of what a file may hold; generous for every real design, far from what could stall a browser. */
export const LIMITS = {
  text: 4_000_000,
  commands: 5_000,
  linePoints: 200,
  allPoints: 20_000,
  /** Different ids of lines, and different things identified. */
  ids: 100,
  weights: 64,
  id: 80,
  name: 120,
  mm: 10_000,
  seed: 4_294_967_295,
} as const;

/**
 * Ids from files: lower case only, so that none is the name of something every object has; `constructor`, the one
 * such name in lower case, is left out by itself.
 */
const ID = /^(?!constructor$)[a-z0-9][a-z0-9/.@-]{0,79}$/;
/** Words to show, as they are, never as markup: up to 120 characters on one line. */
const NAME = /^[^\u0000-\u001f\u007f\u2028\u2029]{1,120}$/u; // eslint-disable-line no-control-regex

const between = (from: number, to: number) => v.pipe(v.number(), v.minValue(from), v.maxValue(to));
const whole = (from: number, to: number) =>
  v.pipe(v.number(), v.integer('a whole number'), v.minValue(from), v.maxValue(to));

export const id = v.pipe(
  v.string(),
  v.regex(ID, 'a name: lower case letters, digits, / . @ and -, 80 at most'),
);
export const name = v.pipe(v.string(), v.regex(NAME, '1 to 120 characters on one line'));
export const mm = between(-LIMITS.mm, LIMITS.mm);
export const width = between(0, 200);
export const fraction = between(0, 1);
/** A turn and a bit either way, radians. */
export const angle = between(-7, 7);
export const count = whole(0, 99);
export const seed = whole(0, LIMITS.seed);
export const content = whole(0, 1_000_000);
export const flag = v.boolean();
export const end = v.picklist(['start', 'end']);
export const fabric: v.PicklistSchema<readonly Fabric[], undefined> = v.picklist(['knit', 'woven'] as const);

/**
 * One of several objects told apart by a key that each has for itself; so a fault is reported in the form that was
 * meant, not as "none of these".
 */
export function keyed<T>(options: Readonly<Record<string, v.GenericSchema<unknown, T>>>) {
  const keys = Object.keys(options);
  const none = v.never(`an object with ${keys.map((key) => `"${key}"`).join(' or ')}`);
  const pick = (input: unknown): v.GenericSchema<unknown, T> => {
    const has =
      typeof input === 'object' && input !== null ? keys.find((k) => Object.hasOwn(input, k)) : undefined;
    return has === undefined ? (none as v.GenericSchema<unknown, never>) : options[has]!;
  };
  return Object.assign(v.lazy(pick), { options: Object.values(options) });
}

export const anchor = keyed<Anchor>({
  on: v.strictObject({ on: id, at: fraction }),
  landmark: v.strictObject({ landmark: id, dx: v.exactOptional(mm), dy: v.exactOptional(mm) }),
  inside: v.strictObject({
    inside: id,
    weights: v.pipe(v.array(between(-1000, 1000)), v.minLength(3), v.maxLength(LIMITS.weights)),
  }),
});

export const turnBy = keyed<TurnBy>({
  until: v.strictObject({ until: v.literal('legs-meet') }),
  angle: v.strictObject({ angle }),
  share: v.strictObject({ share: fraction }),
});

/** The schema of each form a key of a command may have. */
export const FORMS: { readonly [F in keyof Forms]: v.GenericSchema<unknown, Forms[F]> } = {
  id,
  name,
  pair: v.pipe(v.array(id), v.minLength(2), v.maxLength(2)) as unknown as v.GenericSchema<
    unknown,
    readonly [string, string]
  >,
  mm,
  width,
  fraction,
  angle,
  count,
  flag,
  end,
  fabric,
  anchor,
  points: v.pipe(v.array(anchor), v.minLength(2), v.maxLength(LIMITS.linePoints)),
  turnBy,
  amount: v.union([v.literal('measured'), mm]),
};

/** Every command has these two keys; the rest is its own. */
export const base = <Do extends string>(command: Do) => ({
  do: v.literal(command),
  step: v.exactOptional(id),
});
