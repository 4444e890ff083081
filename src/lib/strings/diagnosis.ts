import type { Diagnosis } from '../grading/causes/diagnose.ts';
import { CAUSES } from './causes.ts';
import { formatValue } from './sentence.ts';
import type { Units } from './units.ts';

/**
 * What the wrong procedures that were tried say of a step, in a sentence; undefined when the table is the right one. Plain text.
 */
export function diagnosisText(diagnosis: Diagnosis, units: Units): string | undefined {
  if (diagnosis.kind === 'right') return undefined;
  if (diagnosis.kind === 'none')
    return 'No one of the usual slips alone makes a table like yours; it may be two at once. Begin with the first finding.';
  const { code, amount, unit } = diagnosis.cause;
  const value = amount !== undefined && unit !== undefined ? formatValue(amount, unit, units) : '';
  const sentence = (CAUSES[code] ?? '').replace('{value}', value);
  // Causes that speak of an edge by name are told by the finding itself.
  if (sentence === '' || sentence.includes('{')) return undefined;
  return `Your table is what comes of this: ${sentence}`;
}
