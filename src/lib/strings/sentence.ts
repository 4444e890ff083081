import type { Finding, Unit } from '../grading/types.ts';
import { CAUSES } from './causes.ts';
import { FINDINGS } from './findings.ts';
import { REASONS } from './reasons.ts';
import { REFUSALS } from './refusals.ts';
import { filled } from './template.ts';
import { formatArea } from './area.ts';
import { decimal, formatAngle, formatLength, rulerOf, sizeOf, type Units } from './units.ts';

/** From this on a range has no upper end. */
const OPEN = 1e6;

/** A number of a finding in the learner's units. */
export function formatValue(value: number, unit: Unit, units: Units, signed = false, parts?: number): string {
  if (unit === 'mm') return formatLength(value, units, signed, parts);
  if (unit === 'rad') return formatAngle(value, signed);
  if (unit === 'mm2') return formatArea(value, units, signed);
  return decimal(value, 0);
}

function measured(finding: Finding, units: Units): string {
  const { measured: value, expected, tolerance, unit } = finding;
  if (value === undefined) return '';
  // What was measured on paper is at half scale already, and a sixteenth there is twice the tolerance.
  const onPaper = finding.check === 'paper';
  const show = (n: number, signed = false) =>
    formatValue(n, unit, onPaper ? rulerOf(units) : units, signed, onPaper ? 32 : undefined);
  const signed = typeof expected === 'number' && (expected === 0 || unit === 'rad') && value < 0;
  let text = `${unit === 'count' ? 'counted' : 'measured'} ${show(value, signed)}`;
  if (typeof expected === 'number') {
    text += `, expected ${show(expected)}`;
    const off = value - expected;
    if (expected !== 0 && finding.state === 'wrong') text += ` (off by ${show(off, true)})`;
  } else if (expected) {
    const [low, high] = expected;
    if (high >= OPEN) text += `, expected at least ${show(low)}`;
    else if (low === high) text += `, expected ${show(low)}`;
    else text += `, expected ${show(low)} to ${show(high)}`;
  }
  if (tolerance !== undefined && tolerance > 0) text += `, tolerance ${show(tolerance)}`;
  const reason = finding.reason && REASONS[finding.reason];
  if (reason) text += ` (${reason})`;
  return text;
}

/** The findings in their order, a cause that an earlier one has said of the same dart, and of the same measure of it, left out: it is one cause. */
export function causesOnce(findings: readonly Finding[]): readonly Finding[] {
  const said = new Set<string>();
  return findings.map((finding) => {
    if (!finding.cause) return finding;
    const one = JSON.stringify([finding.cause, finding.about?.['dart'], finding.about?.['what']]);
    if (!said.has(one)) {
      said.add(one);
      return finding;
    }
    const { cause: _, ...rest } = finding;
    return rest;
  });
}

/**
 * One finding as a plain sentence or two in the learner's units: what it is about, what was measured and expected, the tolerance and
 * its reason, and the likely cause. Text only, never markup.
 */
export function sentence(finding: Finding, units: Units): string {
  const about = finding.about ?? {};
  const entry = FINDINGS[finding.code];
  const template =
    typeof entry === 'string' ? entry : (entry?.[finding.state] ?? entry?.right ?? finding.code);
  const subject = filled(template, about, units).trim().replace(/[.:]$/, '');
  const numbers = finding.state === 'missing' ? '' : measured(finding, units);
  let text = numbers ? `${subject}: ${numbers}.` : `${subject}.`;
  if (finding.cause) {
    const { code, amount, unit } = finding.cause;
    const why = CAUSES[code] ?? REFUSALS[code];
    const value = amount === undefined ? '' : formatValue(amount, unit ?? 'mm', units);
    if (why) text += ` ${filled(why.replace('{value}', value), about, units)}`;
  }
  return text;
}

/** Said once above findings: their lengths may be others than the paper has. */
export const lengthsAre = (units: Units): string =>
  `Lengths are ${sizeOf(units) === 2 ? 'as on half-scale paper' : 'full size'}.`;
