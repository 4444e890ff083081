import type { Anchor, Command } from '../recipe/types.ts';

const edgeOf = (anchor: Anchor): string | undefined => ('on' in anchor ? anchor.on : undefined);
const placeOn = (anchor: Anchor): number => ('on' in anchor ? anchor.at : 0);

/** What a command is about, where that must be the same: the thing pointed out, the dart, the seam and piece ... */
function targetOf(command: Command): string {
  switch (command.do) {
    case 'identify':
    case 'read':
      return command.what;
    case 'draw-line':
    case 'draw-curve':
    case 'notch-seam':
      return command.line;
    case 'extend-dart':
    case 'connect':
    case 'slash':
    case 'pivot':
    case 'turn':
    case 'back-off':
    case 'true-legs':
    case 'cap':
    case 'fullness':
      return command.dart;
    case 'cut-slash':
      return command.slash;
    case 'part-at-darts':
      return [...command.darts].sort((a, b) => (a < b ? -1 : 1)).join(' ');
    case 'smooth-seam':
      return `${command.piece} ${command.at}`;
    case 'overlay':
    case 'carry-notches':
    case 'label':
    case 'grain':
    case 'place':
      return command.piece;
    case 'copy':
      return command.as;
    case 'bridge':
    case 'ease':
    case 'take-out':
      return `${command.piece} ${command.dart}`;
    case 'true':
      return `${command.edge} ${command.as ?? ''}`;
    case 'renotch':
      return `${command.piece} ${command.notch}`;
    case 'allow':
      return `${command.piece} ${command.group}`;
    case 'corner':
      return `${command.piece} ${command.before} ${command.after}`;
    case 'walk':
      return `${command.seam} ${command.as ?? ''}`;
    // Of these there is one, or they are told apart by where they lie.
    case 'open-out':
    case 'separate':
    case 'notch':
    case 'remove-notch':
    case 'draw-slash':
      return '';
  }
}

const kindOf = ({ do: name }: Command): string => (name === 'draw-curve' ? 'draw-line' : name);

/**
 * How far a command is from being the worked one: 0 for the same thing done to the same part, more where only their places tell notches
 * and slash lines apart; Infinity where they have nothing to do with each other.
 */
function farFrom(own: Command, worked: Command): number {
  if (kindOf(own) !== kindOf(worked) || targetOf(own) !== targetOf(worked)) return Infinity;
  if (own.do === 'notch' && worked.do === 'notch') return Math.abs(own.at - worked.at);
  if (own.do === 'notch-seam' && worked.do === 'notch-seam') return Math.abs(own.off - worked.off);
  if (own.do === 'draw-slash' && worked.do === 'draw-slash') {
    const away = Math.abs(placeOn(own.from) - placeOn(worked.from));
    return edgeOf(own.from) === edgeOf(worked.from) ? away : own.slash === worked.slash ? 2 : 3;
  }
  if (own.do === 'turn' && worked.do === 'turn') {
    const same = own.into === undefined || worked.into === undefined || own.into === worked.into;
    return same ? 0 : Infinity;
  }
  return 0;
}

const isNotch = (command: Command) => command.do === 'notch' || command.do === 'notch-seam';

/** The name under which a thing can be done again in place of itself. */
const nameOf = (command: Command): string | undefined =>
  command.do === 'notch' || command.do === 'notch-seam'
    ? command.id
    : command.do === 'draw-slash'
      ? command.slash
      : undefined;

/** Whether two commands do the same thing to the same part, so that the later one may be doing the earlier one over. */
export const ofTheSame = (a: Command, b: Command): boolean =>
  kindOf(a) === kindOf(b) && targetOf(a) === targetOf(b) && nameOf(a) === nameOf(b);

/** Whether a command takes away what another made. */
export const takesAway = (a: Command, b: Command): boolean =>
  a.do === 'remove-notch' && isNotch(b) && a.id === nameOf(b);

/** Of commands that name what they make, the last ones: the others were drawn over. Notches that were taken away are none. */
function inForce(own: readonly Command[]): readonly Command[] {
  return own.filter((command, i) => {
    const name = nameOf(command);
    if (name === undefined) return true;
    const later = own.slice(i + 1);
    return !later.some((one) => (one.do === command.do && nameOf(one) === name) || takesAway(one, command));
  });
}

/**
 * Which worked command each of the learner's stands for: nearest pairs first, each worked one for one of the learner's that is still
 * in force. What was done over again stands for the same. With `nearest` a notch only stands for the worked one nearest to it, and is
 * one more where that has another counterpart.
 */
export function counterparts(
  own: readonly Command[],
  worked: readonly Command[],
  nearest = false,
): ReadonlyMap<Command, Command> {
  const pairs = inForce(own).flatMap((a) => {
    const all = worked.map((b) => ({ a, b, far: farFrom(a, b) }));
    const least = nearest && isNotch(a) ? Math.min(...all.map(({ far }) => far)) : Infinity;
    return all.filter(({ far }) => far <= least);
  });
  const near = pairs.filter(({ far }) => far < Infinity).sort((p, q) => p.far - q.far);
  const found = new Map<Command, Command>();
  const taken = new Set<Command>();
  for (const { a, b } of near) {
    const single = nameOf(b) !== undefined;
    if (found.has(a) || (single && taken.has(b))) continue;
    found.set(a, b);
    taken.add(b);
  }
  return found;
}

/** The worked command as the learner would have given it: under the learner's own name, so that what follows finds it. */
export function namedAs(worked: Command, own: Command): Command {
  const step = own.step === undefined ? {} : { step: own.step };
  if (worked.do === 'notch' && own.do === 'notch') return { ...worked, ...step, id: own.id };
  if (worked.do === 'notch-seam' && own.do === 'notch-seam') return { ...worked, ...step, id: own.id };
  if (worked.do === 'draw-slash' && own.do === 'draw-slash') return { ...worked, ...step, slash: own.slash };
  if (worked.do === 'pivot' && own.do === 'pivot') return { ...worked, ...step, slash: own.slash };
  return { ...worked, ...step };
}
