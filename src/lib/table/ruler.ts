import { formatLength, rulerOf, type Units } from '../strings/units.ts';
import { segmentPath } from './paths.ts';

/** Lengths that a ruler may show, mm at full size: round at half scale in the learner's units. */
const ROUND = { mm: [2, 4, 10, 20, 40, 100, 200, 400], inch: [1, 2, 4, 8, 16].map((n) => n * 25.4) };

/** A short ruler that says how large things are: the longest round length that stays under `room` px at k px for each mm. */
export function rulerAt(k: number, units: Units, room = 130): { d: string; text: string } {
  const ruler = rulerOf(units);
  const length = ROUND[ruler].filter((mm) => mm * k <= room).at(-1) ?? ROUND[ruler][0]!;
  const px = length * k;
  const ticks = [0, 0.25, 0.5, 0.75, 1].map((t, i) =>
    segmentPath({ x: px * t, y: 0 }, { x: px * t, y: i % 4 === 0 ? -8 : -5 }),
  );
  // What is written on the table is full size, or half scale where the exercise is: the ruler says it, so that nobody takes the one for the other.
  const half = `${formatLength(length / 2, ruler)} half scale`;
  const text =
    ruler === units ? `${half}, ${formatLength(length, ruler)} full size` : `${half}, as all lengths here`;
  return { d: segmentPath({ x: 0, y: 0 }, { x: px, y: 0 }) + ticks.join(''), text };
}
