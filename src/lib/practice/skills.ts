import type { Command, CommandName } from '../recipe/types.ts';

/**
 * What is practised. A skill of moving darts has three parts: the places of the dart, the method, and how it is finished, as in
 * `waist-to-side/slash/plain`. Every other skill of the hand has one part, the skill of its step, as in `notches`.
 */
export type SkillId = string;

/** Where the dart is and where it goes. The order is that of the course. */
export const PLACES = [
  ...['side-to-style-line', 'waist-to-side', 'waist-to-shoulder', 'waist-to-neckline'],
  ...['waist-to-mid-armhole', 'waist-to-low-side', 'waist-to-centre-front', 'waist-in-two', 'waist'],
  ...['waist-to-parallel', 'waist-to-cluster', 'waist-to-neck-rays', 'waist-to-edge'],
  ...['waist-to-shoulder-line', 'waist-to-armhole-line', 'waist-to-near-line', 'asymmetric'],
] as const;
/** Slash and spread, pin and pivot, a typed angle, or drawn where the dart is. */
export const METHODS = ['slash', 'pivot', 'angle', 'drawn'] as const;
/** `plain`: moved, and nothing more. */
export const FINISHINGS = ['plain', 'backed-off', 'cap', 'gathers', 'tucks', 'ease', 'princess'] as const;

export type Place = (typeof PLACES)[number];
export type Method = (typeof METHODS)[number];
export type Finishing = (typeof FINISHINGS)[number];

/** The id of a skill of moving darts. */
export const skillId = (place: Place, method: Method, finishing: Finishing = 'plain'): SkillId =>
  `${place}/${method}/${finishing}`;

/** The parts of a skill's id; undefined for a skill of another kind or with parts that are not known here. */
export function partsOf(
  skill: SkillId,
): { readonly place: Place; readonly method: Method; readonly finishing: Finishing } | undefined {
  const [a, b, c, more] = skill.split('/');
  const place = PLACES.find((one) => one === a);
  const method = METHODS.find((one) => one === b);
  const finishing = FINISHINGS.find((one) => one === c);
  return place && method && finishing && more === undefined ? { place, method, finishing } : undefined;
}

interface Dart {
  readonly place: Place;
  readonly method: Method;
  readonly finishing?: Finishing;
}

/** What dart skill each lesson is about. The other lessons practise the skills that their steps name. */
export const DARTS: Readonly<Record<string, Dart>> = {
  'slanted-seam': { place: 'side-to-style-line', method: 'slash', finishing: 'princess' },
  'waist-to-side': { place: 'waist-to-side', method: 'slash' },
  'waist-to-shoulder': { place: 'waist-to-shoulder', method: 'slash' },
  'waist-to-neckline': { place: 'waist-to-neckline', method: 'slash' },
  'mid-armhole-by-pivot': { place: 'waist-to-mid-armhole', method: 'pivot' },
  'french-dart': { place: 'waist-to-low-side', method: 'pivot' },
  'centre-front-dart': { place: 'waist-to-centre-front', method: 'pivot' },
  'split-a-dart': { place: 'waist-in-two', method: 'slash' },
  'finish-a-dart': { place: 'waist', method: 'drawn', finishing: 'cap' },
  'parallel-darts': { place: 'waist-to-parallel', method: 'slash' },
  'clustered-darts': { place: 'waist-to-cluster', method: 'slash' },
  'radiating-neck-darts': { place: 'waist-to-neck-rays', method: 'slash' },
  'gathers-tucks-ease': { place: 'waist-to-edge', method: 'slash', finishing: 'gathers' },
  'shoulder-princess': { place: 'waist-to-shoulder-line', method: 'slash', finishing: 'princess' },
  'armhole-princess': { place: 'waist-to-armhole-line', method: 'slash', finishing: 'princess' },
  'line-near-the-bust-point': { place: 'waist-to-near-line', method: 'slash', finishing: 'ease' },
  'asymmetric-darts': { place: 'asymmetric', method: 'slash' },
};

/** Commands that move a dart, and those that finish one; a step whose tools hold neither practises its own skill. */
const MOVES: readonly string[] = ['slash', 'turn', 'draw-slash', 'cut-slash', 'pivot'];
const FINISHES: readonly string[] = ['back-off', 'cap', 'fullness', 'part-at-darts', 'smooth-seam'];

/** A step as far as it says what it practises. */
export interface Practised {
  readonly skill: string;
  readonly tools: readonly CommandName[];
}

/**
 * The skill that a step practises. `lesson` is the lesson's id, for a drill that of the lesson it belongs to; `commands` are
 * what was done in the step: the hand says which method was used where the lesson leaves the choice.
 */
export function skillOf(lesson: string, step: Practised, commands: readonly Command[] = []): SkillId {
  const dart = Object.hasOwn(DARTS, lesson) ? DARTS[lesson] : undefined;
  const tools: readonly string[] = step.tools;
  const finishes = tools.some((tool) => FINISHES.includes(tool));
  if (!dart || !(finishes || tools.some((tool) => MOVES.includes(tool)))) return step.skill;
  const finishing = finishes ? (finishingOf(commands) ?? dart.finishing ?? 'plain') : 'plain';
  const method = dart.method === 'slash' || dart.method === 'pivot' ? methodOf(commands) : undefined;
  return skillId(dart.place, method ?? dart.method, finishing);
}

/** Slashed or pivoted, by what was done last: what was before it was only tried. A turn by hand and by a typed angle look alike. */
function methodOf(commands: readonly Command[]): Method | undefined {
  const last = commands.findLast(({ do: name }) => MOVES.includes(name))?.do as string | undefined;
  return last === undefined ? undefined : last === 'pivot' ? 'pivot' : 'slash';
}

function finishingOf(commands: readonly Command[]): Finishing | undefined {
  const last: { readonly do: string; readonly as?: unknown } | undefined = commands.findLast(({ do: name }) =>
    FINISHES.includes(name),
  );
  if (last?.do === 'fullness') return FINISHINGS.find((one) => one === last.as);
  return last && ({ cap: 'cap', 'back-off': 'backed-off' } as const)[last.do];
}
