import { fromFragment } from '../lessons/drills/link.ts';
import { BANDS, type Band, type Drill, type ExerciseId } from '../lessons/drills/types.ts';
import type { Candidate } from './boundary.ts';
import { EDGE_PLACES, widerSkill } from './known-skills.ts';
import { partsOf, type SkillId } from './skills.ts';

/** How hard a drill is, in logits: by its tolerances, and more where more than one thing has to come right. Ours. */
const LEVELS: Readonly<Record<Band, number>> = { wide: -1, usual: 0, strict: 1 };
const MORE: Readonly<Record<ExerciseId, number>> = {
  slash: 0,
  pivot: 0,
  angle: 0,
  split: 0.5,
  join: 0.5,
  finish: 0.5,
  fullness: 0.5,
  parallel: 1,
  several: 1,
  princess: 1,
  line: 1,
  block: 0,
  ready: 1.5,
};

export const levelOf = ({ exercise, band }: Pick<Drill, 'exercise' | 'band'>): number =>
  LEVELS[band] + MORE[exercise];

/** The drill that has this id (`drillId` of lessons/drills); undefined for the id of something else. */
export function drillOfId(id: string): Drill | undefined {
  const read = /^drill-(.*)$/.exec(id);
  const parsed = fromFragment((read?.[1] ?? '').replaceAll('-', '.'));
  return 'ok' in parsed ? parsed.ok : undefined;
}

/** From either dart to every edge but its own. */
const moves = (ending: string): readonly SkillId[] => [
  ...[...EDGE_PLACES, 'side'].map((to) => `waist-to-${to}/${ending}`),
  ...[...EDGE_PLACES, 'waist'].map((to) => `side-to-${to}/${ending}`),
];
const fromEither = (ending: string): readonly SkillId[] => [`waist-to-${ending}`, `side-to-${ending}`];

/** Skills of one part that a kind of drill practises as a whole. */
const WHOLE: Readonly<Record<SkillId, ExerciseId>> = {
  'read-block': 'block',
  'make-ready': 'ready',
};

/** Every skill that drills practise. */
export const DRILL_SKILLS: readonly SkillId[] = [
  ...['slash', 'pivot', 'angle'].flatMap((method) => moves(`${method}/plain`)),
  ...fromEither('two/slash/plain'),
  ...[...EDGE_PLACES, 'low-side', 'waist'].map((to) => `both-to-${to}/slash/plain`),
  ...['side/drawn/cap', 'waist/drawn/cap', ...moves('slash/cap')],
  ...['gathers', 'tucks', 'ease'].flatMap((as) => fromEither(`edge/slash/${as}`)),
  ...['parallel', 'cluster', 'neck-rays'].flatMap((to) => fromEither(`${to}/slash/backed-off`)),
  'side-to-style-line/slash/plain',
  ...['waist-to-shoulder-line/slash/princess', 'waist-to-armhole-line/slash/princess'],
  ...Object.keys(WHOLE),
];

/** The exercise that practises a skill; undefined when there is none. */
export function exerciseOf(skill: SkillId): ExerciseId | undefined {
  if (Object.hasOwn(WHOLE, skill)) return WHOLE[skill];
  const parts = DRILL_SKILLS.includes(skill) ? partsOf(skill) : undefined;
  switch (parts?.finishing) {
    case undefined:
      return undefined;
    case 'cap':
      return 'finish';
    case 'gathers':
    case 'tucks':
    case 'ease':
      return 'fullness';
    case 'princess':
      return 'princess';
    case 'backed-off':
      return parts!.place.endsWith('-to-parallel') ? 'parallel' : 'several';
    case 'plain':
      if (parts!.place.startsWith('both-')) return 'join';
      if (parts!.place.endsWith('-to-style-line')) return 'line';
      if (parts!.place.endsWith('-to-two')) return 'split';
      return parts!.method === 'drawn' ? undefined : parts!.method;
  }
}

/** What the practice room can offer, for `nextDrill`. */
export const drillCandidates = (): readonly Candidate[] =>
  DRILL_SKILLS.flatMap((skill) => {
    const exercise = exerciseOf(skill);
    return exercise ? BANDS.map((band) => ({ skill, level: levelOf({ exercise, band }) })) : [];
  });

const each = (skills: readonly SkillId[], exercise: ExerciseId): Readonly<Record<SkillId, ExerciseId>> =>
  Object.fromEntries(skills.map((skill) => [skill, exercise]));
/** Skills of one part that drills practise in a step of their own: the kind with the fewest steps that has one. */
const IN_STEP: Readonly<Record<SkillId, ExerciseId>> = {
  'working-dart': 'pivot',
  ...each(['style-line', 'notches', 'connector', 'separate', 'leftover'], 'line'),
  'open-out': 'block',
  ...each(['allowance', 'label-grain', 'walk-seams'], 'ready'),
};

/**
 * The skills of drills (`drillSkill`) in which a skill is practised: by the whole drill, by a step of it, or at a wider place. Of a step that
 * many kinds have only the shortest kind. None where only lessons have it. The skill itself is the only one where drills practise it as a whole.
 */
export function drillsOf(skill: SkillId): readonly SkillId[] {
  if (DRILL_SKILLS.includes(skill)) return [skill];
  if (Object.hasOwn(IN_STEP, skill)) return DRILL_SKILLS.filter((one) => exerciseOf(one) === IN_STEP[skill]);
  if (skill === 'dart/drawn/backed-off') return ['side/drawn/cap', 'waist/drawn/cap'];
  const wider = widerSkill(skill);
  if (wider !== undefined) return drillsOf(wider);
  const own = partsOf(skill);
  // A dart is moved before anything is made of it, and backed off before it gets its cap; the princess seam is one skill from its first line on.
  const after =
    own?.finishing === 'plain'
      ? ['backed-off', 'gathers', 'tucks', 'ease', 'cap']
      : own?.finishing === 'backed-off'
        ? ['cap']
        : [];
  return DRILL_SKILLS.filter((one) => {
    const parts = partsOf(one);
    if (!parts || !own) return false;
    return parts.place === own.place && parts.method === own.method && after.includes(parts.finishing);
  });
}
