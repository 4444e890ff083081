import type { CheckSpec } from '../../../grading/types.ts';
import type { Variant } from '../types.ts';
import { edgesOf, within, type Rules } from './rule.ts';

/** The darts that are finished: those the slashes became, or the block's own where nothing was moved. */
const named = (v: Variant): { readonly edges: readonly string[] } | { readonly darts: readonly string[] } =>
  v.goals.length > 0 ? { edges: edgesOf(v) } : { darts: v.darts };

/** How far each dart is backed off, mm. */
function offs(v: Variant): readonly number[] {
  if (v.row) return edgesOf(v).map((_, i) => v.row!.off + i * v.row!.step);
  return [v.sewn!.off];
}

function finished(v: Variant): CheckSpec {
  const all = offs(v);
  const { row } = v;
  // A row may rise to either end: then only the ends of it and the steps are asked for.
  const numbers =
    row && row.step > 0
      ? { least: all[0]!, most: all.at(-1)!, step: row.step, 'most-step': row.step }
      : { least: all[0]!, most: all[0]! };
  return {
    check: 'dart-finished',
    names: named(v),
    numbers,
    tolerances: { point: within(v, 1.6, 'pencil-line') },
  };
}

export function sewnPoint(v: Variant): Rules {
  return {
    checks: [finished(v)],
    worked: { by: 'finish-darts', ...named(v), off: offs(v) },
  };
}

/** Over an alternate pivot the two legs come out unequal, by some millimetres: they are trued. */
export function trueLegs(v: Variant): Rules {
  const alike = { value: 0.2, reason: 'pencil-line' };
  return {
    checks: [{ check: 'dart-finished', names: named(v), tolerances: { legs: alike } }],
    worked: { by: 'finish-darts', ...named(v), off: offs(v), trued: true },
  };
}

export function cap(v: Variant): Rules {
  const { fold } = v.sewn!;
  return {
    checks: [{ check: 'dart-finished', names: { ...named(v), fold: [fold] } }],
    worked: { by: 'finish-darts', ...named(v), off: offs(v), fold: [fold] },
  };
}
