import type { Command, CommandName } from '../recipe/types.ts';

/**
 * What is practised. A skill of moving darts has three parts, place, method and finishing of the dart, as in `waist-to-side/slash/plain`.
 * Every other skill of the hand has one part, as in `notches`. The steps of lessons and drills name theirs.
 */
export type SkillId = string;

/** Slash and spread, pin and pivot, a typed angle, or drawn where the dart is. */
export const METHODS = ['slash', 'pivot', 'angle', 'drawn'] as const;
/** `plain`: moved, and nothing more. */
export const FINISHINGS = ['plain', 'backed-off', 'cap', 'gathers', 'tucks', 'ease', 'princess'] as const;

export type Method = (typeof METHODS)[number];
export type Finishing = (typeof FINISHINGS)[number];

export interface DartSkill {
  /** Where the dart is and where it goes: `<from>-to-<to>`, or another name where it does not go from one place to one. */
  readonly place: string;
  readonly method: Method;
  readonly finishing: Finishing;
}

/** The id of a skill of moving darts. */
export const skillId = (place: string, method: Method, finishing: Finishing = 'plain'): SkillId =>
  `${place}/${method}/${finishing}`;

/** The parts of a skill's id; undefined for a skill of another kind, or with a method or finishing that is not known here. */
export function partsOf(skill: SkillId): DartSkill | undefined {
  const [place, b, c, more] = skill.split('/');
  const method = METHODS.find((one) => one === b);
  const finishing = FINISHINGS.find((one) => one === c);
  return place && method && finishing && more === undefined ? { place, method, finishing } : undefined;
}

/** One word that stood for a skill of moving darts in content that is frozen, by lesson and skill. */
const IN_PARTS: Readonly<Record<string, SkillId>> = {
  'slanted-seam move-dart': skillId('side-to-style-line', 'slash'),
};

/** A step as far as it says what it practises. */
export interface Practised {
  readonly skill: SkillId;
  readonly tools: readonly CommandName[];
}

/**
 * The skill that a step practises, of the lesson or drill with the id `exercise`. `commands` are what was done in the step: where it
 * leaves the choice, the hand says which method was used, and how the dart was finished.
 */
export function skillOf(exercise: string, step: Practised, commands: readonly Command[] = []): SkillId {
  const key = `${exercise} ${step.skill}`;
  const named = Object.hasOwn(IN_PARTS, key) ? IN_PARTS[key]! : step.skill;
  const parts = partsOf(named);
  if (!parts) return named;
  const method = isByHand(parts.method) ? (methodOf(commands) ?? parts.method) : parts.method;
  return skillId(parts.place, method, finishingOf(commands) ?? parts.finishing);
}

/** A turn by hand and one by a typed angle look alike in what was done, so an angle is never taken from it. */
const isByHand = (method: Method): boolean => method === 'slash' || method === 'pivot';

const SLASHES: readonly string[] = ['slash', 'cut-slash', 'turn'];

/** Slashed or pivoted, by what was done last: what was before it was only tried. */
function methodOf(commands: readonly Command[]): Method | undefined {
  const names: readonly string[] = commands.map((command) => command.do);
  const last = names.findLast((name) => name === 'pivot' || SLASHES.includes(name));
  return last === undefined ? undefined : last === 'pivot' ? 'pivot' : 'slash';
}

const FINISHED: Readonly<Record<string, Finishing>> = {
  cap: 'cap',
  'back-off': 'backed-off',
  'part-at-darts': 'princess',
};

function finishingOf(commands: readonly Command[]): Finishing | undefined {
  let found: Finishing | undefined;
  for (const command of commands as readonly { readonly do: string; readonly as?: unknown }[]) {
    // A dart is backed off before it gets its cap: the cap says more.
    if (command.do === 'back-off' && found === 'cap') continue;
    if (command.do === 'fullness') found = FINISHINGS.find((one) => one === command.as) ?? found;
    else if (Object.hasOwn(FINISHED, command.do)) found = FINISHED[command.do];
  }
  return found;
}
