import { cos, sin } from '../geometry/trig.ts';
import { near } from './finding.ts';
import { PROTRACTOR, RULER } from './paper-scale.ts';
import type { PaperItem } from './paper-value.ts';
import type { Finding } from './types.ts';

interface Measured extends PaperItem {
  readonly value: number;
}

/**
 * Whether a dart's three measures agree with each other, intake = 2 L sin(θ/2) (trade notes; derived): one finding for each dart of which all
 * three were measured and one is off with no cause known. Where they agree the dart itself is another than expected, in another place perhaps; where they do not, one
 * of them was misread. The tolerance is what the readings of leg and angle leave open, and the reading of the intake itself.
 * Lengths mm on paper, angles radians; `found` are the findings of the entries, in their order.
 */
export function agreements(entries: readonly Measured[], found: readonly Finding[]): Finding[] {
  const of = (first: Measured, what: PaperItem['what']): Measured | undefined =>
    entries.find((one) => one.what === what && one.about === first.about && one.piece === first.piece);
  return entries.flatMap((intake) => {
    if (intake.what !== 'intake') return [];
    const angle = of(intake, 'dart-angle');
    const leg = of(intake, 'leg-length');
    if (!angle || !leg) return [];
    const three = [intake, angle, leg].map((one) => found[entries.indexOf(one)]);
    // A cause that is known says more.
    if (!three.some((one) => one?.state === 'wrong') || three.some((one) => one?.cause)) return [];
    const half = angle.value / 2;
    const made = 2 * leg.value * sin(half);
    const value = RULER.value * (1 + 2 * sin(half)) + leg.value * cos(half) * PROTRACTOR.value;
    const about = { open: intake.about, ...(intake.piece !== undefined && { piece: intake.piece }) };
    const tolerance = { value, reason: 'ruler-and-protractor' };
    const finding = near('paper/agrees', 'mm', intake.value, made, tolerance, { about });
    // That they agree puts nothing right that is off.
    return [finding.state === 'right' ? { ...finding, state: 'note' } : finding];
  });
}
