import type { Refusal } from '../recipe/types.ts';
import { REFUSALS } from './refusals.ts';
import { filled } from './template.ts';
import type { Units } from './units.ts';

/** Why a command was refused, and what can be done about it. */
export function explain(refusal: Refusal, units: Units): string {
  const text = REFUSALS[refusal.code] ?? `This cannot be done here (${refusal.code}).`;
  return filled(text, refusal.detail ?? {}, units);
}
