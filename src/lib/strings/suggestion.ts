import { dueReason, type DueFacts } from './practice.ts';

/** Why a drill is suggested: the reasons of `practice/suggest.ts`. */
type Why = { readonly kind: 'due'; readonly due: DueFacts } | { readonly kind: 'first' | 'new' | 'boundary' };

/** Times in ten, in words for who is no friend of numbers. */
const inTen = (chance: number): string => {
  const times = Math.min(10, Math.max(0, Math.round(10 * chance)));
  return times === 0 ? 'hardly ever' : times === 10 ? 'nearly always' : `about ${times} times in 10`;
};

/** What stands before the name of the suggested skill; `more` skills are due besides. */
export const suggestionLead = ({ kind }: Why, more = 0): string =>
  kind === 'due' ? 'Due' : kind === 'first' ? 'To begin with' : more > 0 ? 'Next' : 'Nothing is due. Next';

/** Why this drill, in a sentence or two. */
export function suggestionReason(why: Why, chance: number): string {
  if (why.kind === 'due') return `Because: ${lower(dueReason(why.due))}`;
  if (why.kind === 'first')
    return 'Because: you have done no drill of this kind yet, and all others build on this one.';
  const boundary = `By your marks it would come right at once ${inTen(chance)}: hard enough to learn from.`;
  return why.kind === 'new' ? `Because: it is new to you. ${boundary}` : `Because: ${lower(boundary)}`;
}

const lower = (text: string): string => `${text.slice(0, 1).toLowerCase()}${text.slice(1)}`;

export const SUGGESTION = {
  heading: 'Next for you',
  looking: 'Looking up what is due…',
  practise: 'Practise this',
  more: (n: number): string => (n === 1 ? 'One more skill is due.' : `${n} more skills are due.`),
  /** What is due and has no drill. */
  inLessons: (n: number): string =>
    n === 1 ? 'One skill is due, in a lesson.' : `${n} skills are due, in lessons.`,
  /** A skill that is a part of the drill. */
  within: (drill: string): string => `It comes in the drill: ${drill}.`,
  where: 'See what is due',
} as const;
