import type { AddFullness, Anchor, Command, Turn, TurnBy } from '../recipe/types.ts';
import { nameOf, pieceName, theDart, theMadeDart } from './names.ts';
import { decimal, formatAngle, formatLength, type Units } from './units.ts';

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

const FOLDS = {
  centre: 'towards centre front',
  side: 'towards the side',
  up: 'upwards',
  down: 'downwards',
} as const;

const CORNERS = {
  mitre: 'both cut lines run on until they meet',
  square: 'squared off',
  reflect: 'mirrored, to lie flush when pressed',
  step: 'stepped',
} as const;

const SAYS = {
  match: 'it matches',
  eased: 'it matches but for what is eased',
  differs: 'it differs',
} as const;

const SLASHED = {
  start: 'along the line from its start, and along the connector',
  end: 'along the line from its end, and along the connector',
  cut: 'along the connector, from the line that is cut already,',
} as const;

/** A share of a length, counted from its start. */
const share = (of: number): string => `${decimal(of * 100, 1)} %`;

/** What a command does, as one plain sentence: as it was given, right or wrong. */
export function describe(command: Command, units: Units): string {
  switch (command.do) {
    case 'identify':
      return `Point out: ${nameOf(command.what)}.`;
    case 'read':
      return command.what === 'dart-angle'
        ? `Read the dart's angle: ${formatAngle(command.value)}.`
        : `Read the ${nameOf(command.what)}: ${formatLength(command.value, units)}.`;
    case 'open-out':
      return `Mirror the half across the ${nameOf(command.about)}.`;
    case 'draw-line':
      return `Draw the style line through ${command.points.length} points.`;
    case 'draw-curve':
      return 'Draw the style line in one stroke; it is smoothed to a few curves.';
    case 'notch':
      return `Mark notch ${command.id} across the line, at ${share(command.at)} of its length.`;
    case 'remove-notch':
      return `Take notch ${command.id} away.`;
    case 'extend-dart':
      return `Take both legs of the ${nameOf(command.dart)} dart up to ${placeName(command.to, units)}.`;
    case 'connect':
      return `Draw the connector from the ${command.dart} bust point to the line, ${command.square ? 'square to it, at its nearest place' : `at ${share(command.at)} of its length`}.`;
    case 'slash':
      return `Slash ${SLASHED[command.from ?? 'cut']} ${cutTo(command.past, `the ${command.dart} bust point`, units)}.`;
    case 'draw-slash':
      return `Draw the line of ${theDart(command.slash)} from ${placeName(command.from, units)}${command.via ? ` over ${placeName(command.via, units)}` : ''} to ${placeName(command.to, units)}.`;
    case 'cut-slash':
      return `Cut ${theDart(command.slash)} ${cutTo(command.past, 'the end of its line', units)}.`;
    case 'pivot':
      return `Pin the block at ${placeName(command.about, units)}, trace from ${theMadeDart(command.dart)} round to the mark on ${placeName(command.from, units)}, swing it ${swung(command.by)} and trace the rest.`;
    case 'back-off':
      return `Draw ${theMadeDart(command.dart)} to its sewn point, ${formatLength(command.by, units)} from its tip.`;
    case 'true-legs':
      return `Make the legs of ${theMadeDart(command.dart)} equally long.`;
    case 'cap':
      return `Fold ${theMadeDart(command.dart)} ${FOLDS[command.fold]} and cut its cap.`;
    case 'fullness':
      return filled(command, units);
    case 'part-at-darts':
      return `Cut the front apart along ${theMadeDart(command.darts[0])} and ${theMadeDart(command.darts[1])}, through the bust point.`;
    case 'smooth-seam':
      return `Smooth the seam of the ${pieceName(command.piece)} at the ${nameOf(command.at)}, ${formatLength(command.reach, units)} either way.`;
    case 'notch-seam':
      return `Mark notch ${command.id} on both edges of the ${nameOf(command.line)} seam, ${Math.abs(command.off) < 0.05 ? 'at the bust point' : `${formatLength(Math.abs(command.off), units)} from the bust point`}.`;
    case 'turn':
      return turned(command, units);
    case 'separate':
      return 'Cut the two pieces apart along the rest of the line.';
    case 'place':
      return `Move the ${pieceName(command.piece)} on the table.`;
    case 'overlay':
      return `Close the ${pieceName(command.piece)} on the screen and lay it on the block.`;
    case 'copy':
      return `Copy the pieces, to treat them for a ${command.as === 'woven' ? 'stable woven' : 'knit'}.`;
    case 'bridge':
      return `Bridge the opening in the ${pieceName(command.piece)} and blend the line.`;
    case 'ease':
      return `Mark the stretch of the ${pieceName(command.piece)} that is eased, between ${command.from} and ${command.to}.`;
    case 'take-out':
      return `Take ${command.amount === 'measured' ? 'the excess' : formatLength(command.amount, units)} of the ${pieceName(command.piece)} out at the ${command.end === 'start' ? 'shoulder' : 'side'} end and redraw that edge.`;
    case 'true':
      return `True the back to the front: ${nameOf(command.edge)}.`;
    case 'renotch':
      return `Mark notch ${command.notch} again; the old one stays as a ghost.`;
    case 'allow':
      return `Allowance at ${nameOf(command.group)}: ${formatLength(command.width, units)}.`;
    case 'corner':
      return `Shape the corner between ${nameOf(command.before)} and ${nameOf(command.after)}: ${CORNERS[command.form]}${command.first === undefined ? '' : `, ${nameOf(command.first)} sewn first`}.`;
    case 'carry-notches':
      return `Carry the notches of the ${pieceName(command.piece)} out to the cut line.`;
    case 'label':
      return `Label: ${command.name}, cut ${command.cut}${command.onFold ? ' on the fold' : ''}${command.rightSideUp ? ', right side up' : ''}.`;
    case 'grain':
      return `Draw the grainline of the ${pieceName(command.piece)}.`;
    case 'walk':
      return `Walk the ${nameOf(command.seam)} along the ${command.along} line, and say that ${SAYS[command.says]}.`;
  }
}

/** Where a point of a command lies, in words. */
function placeName(anchor: Anchor, units: Units): string {
  if ('on' in anchor) return `a place at ${share(anchor.at)} of the ${nameOf(anchor.on)}`;
  if ('inside' in anchor) return 'a point inside of the paper';
  const { landmark, dx = 0, dy = 0 } = anchor;
  const away = Math.sqrt(dx * dx + dy * dy);
  const name = `the ${nameOf(landmark)}`;
  return away < 0.05 ? name : `a point ${formatLength(away, units)} from ${name}`;
}

/** How far a cut goes: to its end, short of it or past it. */
function cutTo(past: number, end: string, units: Units): string {
  if (past > 0) return `through ${end}, ${formatLength(past, units)} past it`;
  return past < 0 ? `and stop ${formatLength(-past, units)} short of ${end}` : `up to ${end}, not through it`;
}

function turned({ dart, into, about, by, part }: Turn, units: Units): string {
  const opens = into === undefined ? '' : ` As much opens at ${theDart(into)}.`;
  const what = `Turn the ${part === 'rest' ? 'other part' : 'freed part'} about ${placeName(about, units)}`;
  // A typed angle may go either way: what is wrong must not be told as if it opened.
  if ('angle' in by)
    return `${what} ${angleBy(by.angle)}.${into === undefined ? '' : ` ${capital(theDart(into))} changes by as much.`}`;
  if ('share' in by)
    return `${what} until ${(by.share * 100).toFixed(0)} % of ${theMadeDart(dart)} is closed.${opens}`;
  return `${what} until the legs of ${theMadeDart(dart)} meet, and tape them.${opens}`;
}

/** Positive is clockwise on the screen, as in the recipe. */
const angleBy = (angle: number): string =>
  `by ${formatAngle(Math.abs(angle))} ${angle < 0 ? 'anticlockwise' : 'clockwise'}`;

function swung(by: TurnBy): string {
  if ('angle' in by) return angleBy(by.angle);
  return 'share' in by ? `by ${(by.share * 100).toFixed(0)} % of the dart` : 'until the dart is closed';
}

function filled({ dart, as, before, after, tucks }: AddFullness, units: Units): string {
  const what = as === 'tucks' ? `${tucks ?? 0} ${tucks === 1 ? 'tuck' : 'tucks'}` : as;
  const reach = `${formatLength(before, units)} before to ${formatLength(after, units)} after the opening`;
  return `Leave ${theMadeDart(dart)} as ${what}: draw the edge smoothly from ${reach}.`;
}
