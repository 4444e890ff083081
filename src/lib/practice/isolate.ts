import type { DrillStepId } from '../lessons/drills/steps.ts';
import type { ExerciseId } from '../lessons/drills/types.ts';
import { DRILL_SKILLS, exerciseOf } from './drill-skills.ts';
import { partsOf, type DartSkill, type SkillId } from './skills.ts';

/** The kind of drill that isolates a mistake, and the skills of it that are nearest to the one in which it was made. */
export interface Isolating {
  readonly exercise: ExerciseId;
  /** The step of it that finds the mistake: the only one to be worked. */
  readonly step: DrillStepId;
  /** Skills of drills (`drillSkill`), one of which it is to practise; empty: any. */
  readonly skills: readonly SkillId[];
}

/**
 * Codes of a proof, by what was done wrong before it: a proof only shows that. In the step `separate` the dart had gone into a line, elsewhere to an edge.
 */
const SHOWN: Readonly<Record<string, readonly [inLine: string, elsewhere: string]>> = {
  'angle-kept/sum': ['darts-extended/tip', 'darts-extended/tip'],
  'overlaid/fit': ['dart-closed/pivot', 'dart-moved/pivot'],
  'overlaid/coverage': ['dart-closed/pivot', 'dart-moved/pivot'],
};

/** The finding by which a drill looks for a mistake: the mistake itself, or what a proof showed. */
export const soughtAs = (code: string, skill: SkillId): string =>
  Object.hasOwn(SHOWN, code) ? SHOWN[code]![skill === 'separate' ? 0 : 1] : code;

/** The kind and step that look for a mistake: by code, else by check. Moves are told by their method, below. */
const STEP: Readonly<Record<string, readonly [ExerciseId, DrillStepId]>> = {
  'landmarks-found': ['block', 'find'],
  readings: ['block', 'read'],
  'opened-out': ['block', 'open-out'],
  'darts-extended': ['pivot', 'working-dart'],
  'slashes-laid': ['several', 'lines'],
  'slashes-laid/parallel': ['parallel', 'lines'],
  'slashes-laid/pivot': ['parallel', 'lines'],
  'dart-finished': ['finish', 'sewn-point'],
  'dart-finished/cap': ['finish', 'cap'],
  'dart-finished/legs': ['parallel', 'true-legs'],
  'dart-finished/graduated': ['several', 'sewn-point'],
  fullness: ['fullness', 'draw-over'],
  princess: ['princess', 'smooth'],
  'princess/parted': ['princess', 'cut-apart'],
  'princess/seam': ['princess', 'cut-apart'],
  'line-ends': ['line', 'style-line'],
  'line-shape': ['line', 'style-line'],
  'line-passes': ['line', 'style-line'],
  connectors: ['line', 'connector'],
  'dart-closed': ['line', 'move-along'],
  'notches-placed': ['line', 'notches'],
  'seam-notches': ['princess', 'seam-notches'],
  leftover: ['line', 'leftover'],
  'leftover/copy': ['ready', 'treat'],
  sliver: ['line', 'leftover'],
  separated: ['line', 'separate'],
  overlaid: ['line', 'separate'],
  allowances: ['ready', 'allowances'],
  labels: ['ready', 'label-and-grain'],
  grain: ['ready', 'label-and-grain'],
  walked: ['ready', 'walk-the-seams'],
};
const MOVES: readonly string[] = ['slash-drawn', 'dart-moved'];

/** Found only where the drill ends so. */
const ONLY: Readonly<Record<string, string>> = { 'fullness/tucks': 'tucks', 'fullness/limit': 'ease' };

/** Where the angle is shared out over several openings, the sharing is what can go wrong. */
const SHARED = /-to-(two|parallel|cluster|neck-rays|edge)$/;

/** The kind for a mistake in drawing a slash or moving a dart: by the learner's own method. */
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
function nearness(a: DartSkill | undefined, b: DartSkill | undefined): number {
  if (!a || !b) return 0;
  const [[from, to], [otherFrom, otherTo]] = [ends(a.place), ends(b.place)];
  const score = [a.finishing === b.finishing, to !== '' && to === otherTo, from === otherFrom];
  return score.reduce((sum, same) => 2 * sum + (same ? 1 : 0), 0);
}

/** The kind and step for a mistake; undefined for one that nothing looks for. */
function placeOf(code: string, skill: SkillId): readonly [ExerciseId, DrillStepId] | undefined {
  const [check = ''] = code.split('/');
  if (MOVES.includes(check)) {
    const exercise = moveOf(skill);
    if (exercise === 'pivot') return [exercise, 'pivot'];
    return [exercise, check === 'slash-drawn' ? 'slash-line' : 'move'];
  }
  const key = Object.hasOwn(STEP, code) ? code : check;
  return Object.hasOwn(STEP, key) ? STEP[key] : undefined;
}

/**
 * The smallest drill that isolates the mistake `code` made in a skill: the one step that finds it, of the kind whose steps can, with the learner's
 * own method where it is about a move, as near as it comes to the same place and finishing. undefined for a code that is not known here: it came from
 * another version. Pure.
 */
export function isolating(code: string, skill: SkillId): Isolating | undefined {
  const place = placeOf(soughtAs(code, skill), skill);
  if (!place) return undefined;
  const [exercise, step] = place;
  const own = partsOf(skill);
  const there = DRILL_SKILLS.filter((one) => exerciseOf(one) === exercise)
    .map((one) => ({ one, parts: partsOf(one) }))
    // A dart that is finished where it lies needs no moving first.
    .filter(({ parts }) => exercise !== 'finish' || parts?.method === 'drawn')
    .filter(({ parts }) => ONLY[code] === undefined || parts?.finishing === ONLY[code])
    .map(({ one, parts }) => ({ one, score: nearness(parts, own) }));
  const best = Math.max(...there.map(({ score }) => score));
  return { exercise, step, skills: there.filter(({ score }) => score === best).map(({ one }) => one) };
}
