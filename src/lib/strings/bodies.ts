import type { OnBody, Outcome, OwnBody } from '../lessons/bodies.ts';
import { describe } from './commands.ts';
import { explain } from './explain.ts';
import { sentence } from './sentence.ts';
import { formatAngle, type Units } from './units.ts';

/** How it stands on another body, in a word or two. */
export const OUTCOMES: Readonly<Record<Outcome, string>> = {
  holds: 'Holds',
  place: 'Holds, but for a place',
  fails: 'Fails here',
  refused: 'Cannot be done here',
};

/** The same where steps were left out: what was not looked at is not said to hold. */
export const outcomeText = (outcome: Outcome, left: readonly string[]): string =>
  outcome === 'holds' && left.length > 0 ? 'Holds, as far as looked at' : OUTCOMES[outcome];

/** That steps were worked and not looked at, by their titles; undefined where there are none. */
export function notLookedAt(left: readonly string[]): string | undefined {
  if (left.length === 0) return undefined;
  const titles = left.map((title) => `“${title}”`).join(', ');
  return `Not looked at: ${titles}. What is not accepted on your own body says nothing on another.`;
}

/** That all holds on a body. */
export const allHolds = (left: readonly string[]): string =>
  left.length === 0
    ? 'Everything that was measured lies within its tolerance here, too.'
    : 'What was looked at lies within its tolerance here, too.';

/** What is said above the bodies. */
export const BODIES = {
  title: 'On five bodies',
  intro:
    'All that you did, done again on the other demo figures: the same places on each body, by the same intent. What only looks right on the body you work on shows where it fails.',
  some: 'Only the steps that are accepted on the body you work on are looked at.',
  own: 'Your own body',
  worked: 'the body you work on',
  back: 'Back to my own table',
  all: 'All bodies',
  working: 'This body is being worked.',
} as const;

/** Why nothing is shown on other bodies, where no step is to be looked at there. `steps`: of the whole exercise. */
export function nothingToShow({ toRead, read }: Pick<OwnBody, 'toRead' | 'read'>, steps: number): string {
  if (toRead === steps)
    return 'Only readings are asked for here. Each body has its own angle and lengths, so there is no construction that could be tried on the others.';
  if (read > 0)
    return 'Of the body you work on only readings are accepted so far, and each body has its own. Check another step: it is shown on the others once it is accepted.';
  return 'No step is accepted yet on the body you work on: check one first, then it is shown on the others.';
}

/** That readings are left out; undefined where there are none. */
export const readingsLeftOut = (count: number): string | undefined =>
  count === 0
    ? undefined
    : `${count === 1 ? 'One reading is' : `${count} readings are`} left out: readings are numbers of one body, not a construction.`;

/** What is not right on a body, in sentences; the first one says most. Plain text. */
export function bodyTexts(one: OnBody, units: Units): readonly string[] {
  if (one.refused) return [`${describe(one.refused.command, units)} ${explain(one.refused.refused, units)}`];
  const found = one.findings.map((finding) => sentence(finding, units));
  if (one.outcome === 'place') return [...found, PLACE];
  return one.typed === undefined ? found : [...found, typedText(one.typed)];
}

const PLACE =
  'A place goes along as a share of its line. Lines differ in length from body to body, so it is marked anew here; the construction itself holds.';

const typedText = (angle: number): string =>
  `The angle was typed, ${formatAngle(Math.abs(angle))}: it was read from one body. A dart that is closed until its legs meet holds on every body.`;

/** A line for each outcome that there is, for those who hear it. `left`: titles of the steps that were not looked at. */
export function summary(bodies: readonly OnBody[], left: readonly string[]): string {
  return [ofAll(bodies, left), notLookedAt(left)].filter((text) => text !== undefined).join(' ');
}

function ofAll(bodies: readonly OnBody[], left: readonly string[]): string {
  const on = (...outcomes: readonly Outcome[]): readonly string[] =>
    bodies.filter(({ outcome }) => outcomes.includes(outcome)).map(({ figure }) => figure);
  const [holds, place, bad] = [on('holds'), on('place'), on('fails', 'refused')];
  if (holds.length === bodies.length)
    return `It holds on all bodies${left.length === 0 ? '' : ', as far as it was looked at'}.`;
  return [
    `It holds on ${holds.length === 0 ? 'none' : holds.length} of ${bodies.length} other bodies`,
    ...(place.length === 0 ? [] : [`but for a place on ${place.join(', ')}`]),
    ...(bad.length === 0 ? [] : [`and not on ${bad.join(', ')}`]),
  ]
    .join(', ')
    .concat('.');
}
