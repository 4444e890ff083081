import type { ExerciseId } from '../lessons/drills/types.ts';
import { DRILL_SKILLS, exerciseOf } from './drill-skills.ts';
import { partsOf, type DartSkill, type SkillId } from './skills.ts';

/**
 * Why no drill isolates a mistake:
 * - `reading`: it was made in reading the block, which has no drill;
 * - `whole-front`: drills work on the half front and do not open it out;
 * - `later-work`: it belongs to pieces that are made ready to be sewn, and drills end before that;
 * - `proof`: it shows in the proof over a whole lesson, not in one move of the hand;
 * - `unknown`: the code is not known here: it came from another version.
 */
export type NoDrill = 'reading' | 'whole-front' | 'later-work' | 'proof' | 'unknown';

/** The kind of drill that isolates a mistake, and the skills of it that are nearest to the one in which it was made. */
export interface Isolating {
  readonly exercise: ExerciseId;
  /** Skills of drills (`drillSkill`), one of which it is to practise; empty: any. */
  readonly skills: readonly SkillId[];
}

const NONE: Readonly<Record<string, NoDrill>> = {
  'landmarks-found': 'reading',
  readings: 'reading',
  'opened-out': 'whole-front',
  // Drills are for one cloth.
  'leftover/copy': 'later-work',
  allowances: 'later-work',
  labels: 'later-work',
  grain: 'later-work',
  walked: 'later-work',
  'angle-kept': 'proof',
};

/** The kind with the fewest steps among those that look for it: by code, else by check. Moves are told by their method, below. */
const SMALLEST: Readonly<Record<string, ExerciseId>> = {
  'darts-extended': 'pivot',
  'slashes-laid': 'several',
  'slashes-laid/parallel': 'parallel',
  'slashes-laid/pivot': 'parallel',
  'dart-finished': 'finish',
  'dart-finished/legs': 'parallel',
  'dart-finished/graduated': 'several',
  fullness: 'fullness',
  princess: 'princess',
  'line-ends': 'line',
  'line-shape': 'line',
  'line-passes': 'line',
  connectors: 'line',
  'dart-closed': 'line',
  'notches-placed': 'line',
  'seam-notches': 'princess',
  leftover: 'line',
  sliver: 'line',
  separated: 'line',
  overlaid: 'line',
};
const MOVES: readonly string[] = ['slash-drawn', 'dart-moved'];

/** Found only where the drill ends so. */
const ONLY: Readonly<Record<string, string>> = { 'fullness/tucks': 'tucks', 'fullness/limit': 'ease' };

/** Where the angle is shared out over several openings, the sharing is what can go wrong. */
const SHARED = /-to-(two|parallel|cluster|neck-rays|edge)$/;

/** The kind for a mistake in drawing a slash or moving a dart: by the learner's own method, each of some two or three steps. */
function moveOf(skill: SkillId): ExerciseId {
  const own = exerciseOf(skill);
  const { place = '', method } = partsOf(skill) ?? {};
  if (own === 'split' || own === 'join') return own;
  if (method === 'pivot' || method === 'angle') return method;
  if (place.startsWith('both-to-')) return 'join';
  return SHARED.test(place) ? 'split' : 'slash';
}

/** Ends that only lessons have, by the place of drills that lies there. */
const NEAR: Readonly<Record<string, string>> = { 'low-side': 'side', 'mid-armhole': 'armhole' };

function ends(place: string): readonly [from: string, to: string] {
  const [from = '', to = ''] = place.split('-to-');
  return [from, NEAR[to] ?? to.replace(/-line$/, '')];
}

/** How near a skill of drills is to the one in which the mistake was made: what is made of the dart first, then where to and where from. */
function nearness(a: DartSkill, b: DartSkill | undefined): number {
  if (!b) return 0;
  const [[from, to], [otherFrom, otherTo]] = [ends(a.place), ends(b.place)];
  const score = [a.finishing === b.finishing, to !== '' && to === otherTo, from === otherFrom];
  return score.reduce((sum, same) => 2 * sum + (same ? 1 : 0), 0);
}

/**
 * The smallest drill that isolates the mistake `code` made in a skill: of the kinds whose steps can find it, with the learner's own method
 * where it is about a move, the one with the fewest steps, as near as it comes to the same place and finishing. Or why there is none. Pure.
 */
export function isolating(code: string, skill: SkillId): Isolating | NoDrill {
  const [check = ''] = code.split('/');
  const none = Object.hasOwn(NONE, code) ? NONE[code] : Object.hasOwn(NONE, check) ? NONE[check] : undefined;
  if (none) return none;
  const exercise = MOVES.includes(check)
    ? moveOf(skill)
    : Object.hasOwn(SMALLEST, code)
      ? SMALLEST[code]
      : Object.hasOwn(SMALLEST, check)
        ? SMALLEST[check]
        : undefined;
  if (!exercise) return 'unknown';
  const own = partsOf(skill);
  const there = DRILL_SKILLS.filter((one) => exerciseOf(one) === exercise)
    .map((one) => ({ one, parts: partsOf(one)! }))
    // A dart that is finished where it lies needs no moving first: two steps in place of five.
    .filter(({ parts }) => exercise !== 'finish' || parts.method === 'drawn')
    .filter(({ parts }) => ONLY[code] === undefined || parts.finishing === ONLY[code])
    .map(({ one, parts }) => ({ one, score: nearness(parts, own) }));
  const best = Math.max(...there.map(({ score }) => score));
  return { exercise, skills: there.filter(({ score }) => score === best).map(({ one }) => one) };
}
