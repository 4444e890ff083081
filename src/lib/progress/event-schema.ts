import * as v from 'valibot';
import type { ProgressEvent } from './events.ts';

const unique = v.pipe(v.string(), v.regex(/^[A-Za-z0-9-]{8,64}$/, '8 to 64 letters, digits and hyphens'));
/** Ids of lessons and steps; those of drills also carry their seed and what else makes them. */
const name = v.pipe(v.string(), v.regex(/^[A-Za-z0-9][A-Za-z0-9._~:;=,+-]{0,119}$/, 'an id'));
const skill = v.pipe(v.string(), v.regex(/^[a-z0-9-]{1,60}(\/[a-z0-9-]{1,60}){0,2}$/, 'the id of a skill'));
const code = v.pipe(v.string(), v.regex(/^[a-z0-9-]{1,60}(\/[a-z0-9-]{1,60})?$/, 'the code of a finding'));
const count = (most: number) => v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(most));
const amount = (most: number) => v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(most));

/** The last moment that a Date can hold, ms. */
const LAST_MOMENT = 8.64e15;

const base = {
  id: unique,
  at: count(LAST_MOMENT),
  device: unique,
  exercise: v.strictObject({ kind: v.picklist(['lesson', 'drill']), id: name, content: count(1e6) }),
  step: name,
  skill,
};

/** One event. Strict: a key that is not known is refused, so nothing personal can ride along. */
export const eventSchema = v.variant('kind', [
  v.strictObject({
    ...base,
    kind: v.literal('mark'),
    verdict: v.picklist(['notReady', 'needsWork', 'accepted']),
    codes: v.pipe(v.array(code), v.maxLength(60)),
    error: v.nullable(amount(1e6)),
    hints: count(100),
    worked: v.boolean(),
    seconds: amount(1e6),
    level: v.nullable(v.pipe(v.number(), v.finite(), v.minValue(-20), v.maxValue(20))),
  }),
  v.strictObject({ ...base, kind: v.literal('worked') }),
  v.strictObject({ ...base, kind: v.literal('hint'), hints: count(100) }),
  v.strictObject({ ...base, kind: v.literal('credit'), of: unique, code }),
]) satisfies v.GenericSchema<ProgressEvent>;

/** An entry of the device's own storage; undefined when it is no event that this version knows. Never throws. */
export function readStored(entry: unknown): ProgressEvent | undefined {
  if (typeof entry !== 'string') return undefined;
  try {
    const read = v.safeParse(eventSchema, JSON.parse(entry));
    return read.success ? read.output : undefined;
  } catch {
    return undefined;
  }
}
