import type { Point } from '../geometry/types.ts';
import type { Refusal } from '../recipe/types.ts';
import type { Cause, CheckSpec, Finding, FindingState, Tolerance, Unit, Where } from './types.ts';

/**
 * What a finding may carry beside its numbers. A cause that is given as a function is looked for only where something is wrong, a
 * place only where something is not right.
 */
export interface Extra {
  readonly where?: Where | (() => Where) | undefined;
  readonly cause?: Cause | (() => Cause | undefined) | undefined;
  readonly about?: Readonly<Record<string, string | number>> | undefined;
}

// A code begins with the name of its check, and a lesson has a few dozen codes that come again in every mark.
const checks = new Map<string, string>();

function checkOf(code: string): string {
  let check = checks.get(code);
  if (check === undefined) checks.set(code, (check = code.slice(0, code.indexOf('/'))));
  return check;
}

/** Puts a lesson's word behind a beginning, as in `readings/intake`; each once, so that it is the same string in every mark. */
export function behind(start: string): (word: string) => string {
  const made = new Map<string, string>();
  return (word) => {
    let whole = made.get(word);
    if (whole === undefined) made.set(word, (whole = start + word));
    return whole;
  };
}

/** Every finding has all fields, in one order: engines then see one kind of record. What is undefined is left out of files. */
function make(
  code: string,
  state: FindingState,
  unit: Unit,
  { where, cause, about }: Extra,
  measured: number | undefined,
  expected: Finding['expected'],
  tolerance: Tolerance | undefined,
): Finding {
  // A cause explains a fault; there is none to explain where all is right.
  const open = state !== 'right';
  return {
    check: checkOf(code),
    code,
    state,
    unit,
    cause: open ? (typeof cause === 'function' ? cause() : cause) : undefined,
    where: typeof where === 'function' ? (open ? where() : undefined) : where,
    about,
    measured,
    expected,
    tolerance: tolerance?.value,
    reason: tolerance?.reason,
  };
}

const NOTHING: Extra = {};

/** Right when `measured` lies within the tolerance of `expected` (mm, radians or a count, as `unit` says). */
export function near(
  code: string,
  unit: Unit,
  measured: number,
  expected: number,
  tolerance: Tolerance,
  extra: Extra = NOTHING,
): Finding {
  const ok = Math.abs(measured - expected) <= tolerance.value;
  return make(code, ok ? 'right' : 'wrong', unit, extra, measured, expected, tolerance);
}

/** Right when `measured` lies in the closed range, widened by the tolerance on both sides. */
export function between(
  code: string,
  unit: Unit,
  measured: number,
  range: readonly [number, number],
  tolerance: Tolerance,
  extra: Extra = NOTHING,
): Finding {
  const ok = measured >= range[0] - tolerance.value && measured <= range[1] + tolerance.value;
  return make(code, ok ? 'right' : 'wrong', unit, extra, measured, range, tolerance);
}

/** A matter of yes or no. */
export const fact = (code: string, ok: boolean, extra: Extra = NOTHING): Finding =>
  make(code, ok ? 'right' : 'wrong', 'text', extra, undefined, undefined, undefined);

/** Wrong because a command could not be followed: the refusal is the cause, and its details go along for the sentence. */
export const refusedBy = (code: string, refusal: Refusal, about: Extra['about'] = {}): Finding =>
  fact(code, false, { cause: { code: refusal.code }, about: { ...refusal.detail, ...about } });

/** Something that is still to do: never wrong, but the step is not ready. */
export const missing = (code: string, extra: Extra = NOTHING): Finding =>
  make(code, 'missing', 'text', extra, undefined, undefined, undefined);

/** Something to say that changes no verdict. */
export const note = (code: string, extra: Extra = NOTHING): Finding =>
  make(code, 'note', 'text', extra, undefined, undefined, undefined);

/** The named tolerance of a step. Throws when the lesson's data does not give it: a fault of the lesson, found by its tests. */
export function tolerance(spec: CheckSpec, name: string): Tolerance {
  const found = spec.tolerances?.[name];
  if (!found) throw new RangeError(`check ${spec.check} needs the tolerance '${name}'`);
  return found;
}

/** A named number of a step (mm, radians or a count). Throws like `tolerance`. */
export function number(spec: CheckSpec, name: string): number {
  const found = spec.numbers?.[name];
  if (found === undefined) throw new RangeError(`check ${spec.check} needs the number '${name}'`);
  return found;
}

/** A named list of ids of a step; one id counts as a list of one. Throws like `tolerance`. */
export function names(spec: CheckSpec, name: string): readonly string[] {
  const found = spec.names?.[name];
  if (found === undefined) throw new RangeError(`check ${spec.check} needs the names '${name}'`);
  return typeof found === 'string' ? [found] : found;
}

export const at = (point: Point): Where => ({ kind: 'point', at: point });
export const dimension = (from: Point, to: Point): Where => ({ kind: 'dimension', from, to });
