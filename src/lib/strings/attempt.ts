import type { Mark } from '../grading/types.ts';
import type { Origin } from '../lessons/divergence.ts';
import type { Stemming } from '../lessons/stemming.ts';
import type { StepHelp } from '../recipe/types.ts';
import { describe } from './commands.ts';
import { helpWords } from './second-chance.ts';
import { formatValue } from './sentence.ts';
import { decimal, type Units } from './units.ts';

/** What came of copying an attempt. */
export const COPIED = {
  done: 'Your attempt is copied as text. Whoever gets it opens it under “Watch an attempt”.',
  failed: 'It could not be copied here. Save your attempt to a file instead.',
  own: 'This attempt is on your own measures. They stay on this device, so it is not copied.',
} as const;

/** What a file says of the help that was taken, apart from what is marked. `titleOf` gives a step's title. Plain text. */
export function helpSaid(help: readonly StepHelp[], titleOf: (step: string) => string): string {
  const said = help
    .map(
      ({ step, hints, shown }) => `“${titleOf(step)}” ${lower(helpWords(hints, shown)).replace(/\.$/, '')}`,
    )
    .join('; ');
  return `The file says: ${said}. That is its own word, and changes no mark.`;
}

/**
 * That an attempt is of one step of a drill, or begins after steps that were given; undefined where it is a whole one from the beginning. `kind`: the
 * drill's, as it is chosen. `given`, `own`: titles of the steps that were done when it began, and that are worked. `unchanged`: what was given is what the
 * drill gives. Plain text.
 */
export function partSaid(
  kind: string,
  given: readonly string[],
  own: readonly string[],
  alone: boolean,
  unchanged = true,
): string | undefined {
  const quoted = given.map((title) => `“${title}”`);
  const before =
    given.length === 0
      ? 'Nothing was given before it.'
      : unchanged
        ? `Given before it, and not the work of whoever made the attempt: ${quoted.join(', ')}.`
        : `What stands before it (${quoted.join(', ')}) is not what the drill gives: the file was changed there. It is marked on what the file has.`;
  if (alone) return `One step of a drill, “${own[0]}”. Its kind: ${kind}. ${before}`;
  return given.length === 0 ? undefined : `A drill of the kind: ${kind}. ${before}`;
}

const lower = (text: string): string => `${text.slice(0, 1).toLowerCase()}${text.slice(1)}`;

/** How many steps are accepted, and where that comes from. */
export function markedAgain(marks: readonly Mark[]): string {
  const accepted = marks.filter(({ verdict }) => verdict === 'accepted').length;
  const said =
    marks.length === 1
      ? `The step is ${accepted === 1 ? 'accepted' : 'not accepted yet'}`
      : `${accepted} of ${marks.length} steps accepted`;
  return `${said}, marked again from what was done.`;
}

/** What is said of where a mistake began, before it is known and where there is none. */
export const LOOKING = 'Looking for where it began …';

/** A share of what is off that counts as nothing. */
const NOTHING = 0.005;

/** Where what is wrong began, in words. `titleOf` gives a step's title. Plain text. */
export function originText(origin: Origin, titleOf: (step: string) => string, units: Units): string {
  switch (origin.kind) {
    case 'right':
      return 'Nothing that was done is off.';
    case 'goes-on':
      return `Nothing has to be taken back: “${titleOf(origin.shows)}” can still be brought right by going on from its end.`;
    case 'unknown':
      return `In “${titleOf(origin.shows)}” something is off, but no single command can be named with which it began.`;
    case 'began': {
      const { index, command, step, shows, stemming } = origin;
      const elsewhere = shows === step ? '' : ` It shows in “${titleOf(shows)}”.`;
      // Where something was left out before it, no finding owes anything to the command itself.
      const alone = stemming.every(({ share }) => Math.abs(share) < NOTHING);
      const more = alone ? ' Done rightly, this command alone would not be enough.' : '';
      return (
        `It began ${index < 0 ? 'before, in what was given' : `with command ${index + 1}`}, in “${titleOf(step)}”: ${describe(command, units)} ` +
        `After it the result can no longer be reached by going on; this has to be taken back or done over.${more}${elsewhere}`
      );
    }
  }
}

const percent = (share: number): string => `${decimal(share * 100, 0)} %`;

/** How much of a finding stems from where it began, in words and in the learner's units. Plain text. */
export function stemText({ off, amount, share, unit }: Stemming, units: Units): string {
  if (off === undefined || amount === undefined)
    return share > 0 ? 'It stems from there.' : 'It does not stem from there.';
  const show = (value: number): string => formatValue(value, unit, units, true);
  if (Math.abs(share) < NOTHING) return `None of the ${show(off)} stems from there.`;
  if (Math.abs(share - 1) < NOTHING) return `All of it stems from there: ${show(amount)}.`;
  if (share < 0)
    return `What began there works against it by ${show(amount)}: without it, more would be off.`;
  const much = `Of ${show(off)}, ${show(amount)} stem from there (${percent(share)})`;
  return share > 1 ? `${much}: the rest works against it.` : `${much}.`;
}
