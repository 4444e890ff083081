import { fromFragment } from '../lessons/drills/link.ts';
import { BANDS, type Band, type Drill, type ExerciseId } from '../lessons/drills/types.ts';
import type { Candidate } from './boundary.ts';
import { partsOf, type SkillId } from './skills.ts';

/** How hard a drill is, in logits: by its tolerances, and a little more where two openings or two darts have to come right. Ours. */
const LEVELS: Readonly<Record<Band, number>> = { wide: -1, usual: 0, strict: 1 };
const TWO = 0.5;

export const levelOf = ({ exercise, band }: Pick<Drill, 'exercise' | 'band'>): number =>
  LEVELS[band] + (exercise === 'split' || exercise === 'join' ? TWO : 0);

/** The drill that has this id (`drillId` of lessons/drills); undefined for the id of something else. */
export function drillOfId(id: string): Drill | undefined {
  const read = /^drill-(.*)$/.exec(id);
  const parsed = fromFragment((read?.[1] ?? '').replaceAll('-', '.'));
  return 'ok' in parsed ? parsed.ok : undefined;
}

const EVERYWHERE = ['shoulder', 'neckline', 'armhole', 'centre-front'] as const;

/** Every skill that drills practise. */
export const DRILL_SKILLS: readonly SkillId[] = [
  ...(['slash', 'pivot', 'angle'] as const).flatMap((method) => [
    ...[...EVERYWHERE, 'side'].map((to) => `waist-to-${to}/${method}/plain`),
    ...[...EVERYWHERE, 'waist'].map((to) => `side-to-${to}/${method}/plain`),
  ]),
  ...['waist-to-two/slash/plain', 'side-to-two/slash/plain'],
  ...EVERYWHERE.map((to) => `both-to-${to}/slash/plain`),
];

/** The exercise that practises a skill; undefined when there is none. */
export function exerciseOf(skill: SkillId): ExerciseId | undefined {
  const parts = DRILL_SKILLS.includes(skill) ? partsOf(skill) : undefined;
  if (!parts) return undefined;
  if (parts.place.startsWith('both-')) return 'join';
  if (parts.place.endsWith('-to-two')) return 'split';
  return parts.method === 'drawn' ? undefined : parts.method;
}

/** What the practice room can offer, for `nextDrill`. */
export const drillCandidates = (): readonly Candidate[] =>
  DRILL_SKILLS.flatMap((skill) => {
    const exercise = exerciseOf(skill);
    return exercise ? BANDS.map((band) => ({ skill, level: levelOf({ exercise, band }) })) : [];
  });
