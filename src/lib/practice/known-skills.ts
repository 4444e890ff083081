import { partsOf, type SkillId } from './skills.ts';

/** Skills of one part: what the hand does that is not moving a dart, and what a whole drill of such steps comes to. */
export const HAND_SKILLS = [
  'read-block',
  'working-dart',
  'open-out',
  'style-line',
  'notches',
  'connector',
  'separate',
  'leftover',
  'allowance',
  'label-grain',
  'walk-seams',
  'close-and-overlay',
  'make-ready',
] as const;

/** Edges to which one dart goes. */
export const EDGE_PLACES = ['shoulder', 'neckline', 'armhole', 'centre-front'] as const;

/** Where an angle goes, after `-to-`. */
const ENDS = [
  ...EDGE_PLACES,
  ...['side', 'waist', 'mid-armhole', 'low-side'],
  ...['two', 'parallel', 'cluster', 'neck-rays', 'edge'],
  ...['style-line', 'near-line', 'shoulder-line', 'armhole-line'],
] as const;

/** Places of skills of moving darts: from where to where, a dart that stays where it is, and darts that differ on the two halves. */
const PLACES: ReadonlySet<string> = new Set([
  ...['waist', 'side', 'both'].flatMap((from) => ENDS.map((to) => `${from}-to-${to}`)),
  ...['dart', 'waist', 'side', 'asymmetric'],
]);

/** A narrower place that only lessons have, and the place of drills that it is a part of. */
const PART_OF: Readonly<Record<string, string>> = { 'mid-armhole': 'armhole', 'low-side': 'side' };

/** The skill of drills that a lesson's skill to a narrower place is a part of: the hand does the same. undefined where there is none. */
export function widerSkill(skill: SkillId): SkillId | undefined {
  const [, from, to, rest] = /^([a-z]+)-to-([a-z-]+)(\/.*)$/.exec(skill) ?? [];
  const place = to !== undefined && Object.hasOwn(PART_OF, to) ? PART_OF[to] : undefined;
  return place && `${from}-to-${place}${rest}`;
}

/** Whether lessons and drills have such a skill today. What was practised under another id stays in the progress, and is told as it is. */
export function isKnownSkill(skill: SkillId): boolean {
  if ((HAND_SKILLS as readonly string[]).includes(skill)) return true;
  const parts = partsOf(skill);
  return parts !== undefined && PLACES.has(parts.place);
}
