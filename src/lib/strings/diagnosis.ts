import type { StepCause } from '../lessons/causes/step-cause.ts';
import { CAUSES } from './causes.ts';
import { formatValue } from './sentence.ts';
import type { Units } from './units.ts';

/** What was found of how a step went wrong, in a sentence; undefined where nothing can be said. Plain text. */
export function diagnosisText(found: StepCause, units: Units): string | undefined {
  if (found.kind === 'silent') return undefined;
  if (found.kind === 'none')
    return 'None of the known ways of going wrong makes this table. Begin with the first finding.';
  const { code, amount, unit } = found.cause;
  const value = amount !== undefined && unit !== undefined ? formatValue(amount, unit, units) : '';
  const sentence = (CAUSES[code] ?? '').replace('{value}', value);
  // Causes that speak of an edge by name are told by the finding itself.
  if (sentence === '' || sentence.includes('{')) return undefined;
  return `Your table is what comes of this: ${sentence}`;
}
