import { degrees } from '../geometry/trig.ts';
import type { AddFullness, Command, Turn, TurnBy } from '../recipe/types.ts';
import { nameOf, pieceName, theDart } from './names.ts';
import { formatLength, type Units } from './units.ts';

const FOLDS = {
  centre: 'towards centre front',
  side: 'towards the side',
  up: 'upwards',
  down: 'downwards',
} as const;

/** What a command does, as one plain sentence. */
export function describe(command: Command, units: Units): string {
  switch (command.do) {
    case 'identify':
      return `Point out: ${nameOf(command.what)}.`;
    case 'read':
      return command.what === 'dart-angle'
        ? `Read the dart's angle: ${degrees(command.value).toFixed(1)}°.`
        : `Read the ${nameOf(command.what)}: ${formatLength(command.value, units)}.`;
    case 'open-out':
      return `Mirror the half across the ${nameOf(command.about)}.`;
    case 'draw-line':
      return `Draw the style line through ${command.points.length} points.`;
    case 'draw-curve':
      return 'Draw the style line in one stroke; it is smoothed to a few curves.';
    case 'notch':
      return `Mark notch ${command.id} across the line.`;
    case 'remove-notch':
      return `Take notch ${command.id} away.`;
    case 'extend-dart':
      return `Take both legs of the ${nameOf(command.dart)} dart up to the bust point.`;
    case 'connect':
      return `Draw the connector from the ${command.dart} bust point to the line.`;
    case 'slash':
      return `Slash along the line and the connector up to the ${command.dart} bust point, not through it.`;
    case 'draw-slash':
      return `Draw the line of ${theDart(command.slash)} from an edge to the bust point.`;
    case 'cut-slash':
      return command.past > 0
        ? `Cut ${theDart(command.slash)} through the bust point, ${formatLength(command.past, units)} past it.`
        : `Cut ${theDart(command.slash)} to the bust point, not through it.`;
    case 'pivot':
      return `Pin the block, trace from ${theDart(command.dart)} round to the mark, swing it ${swung(command.by)} and trace the rest.`;
    case 'back-off':
      return `Draw the ${nameOf(command.dart)} dart to its sewn point, ${formatLength(command.by, units)} from its tip.`;
    case 'true-legs':
      return `Make the legs of the ${nameOf(command.dart)} dart equally long.`;
    case 'cap':
      return `Fold the ${nameOf(command.dart)} dart ${FOLDS[command.fold]} and cut its cap.`;
    case 'fullness':
      return filled(command, units);
    case 'part-at-darts':
      return `Cut the front apart along the ${nameOf(command.darts[0])} dart and the ${nameOf(command.darts[1])} dart, through the bust point.`;
    case 'smooth-seam':
      return `Smooth the seam of the ${pieceName(command.piece)} at the ${nameOf(command.at)}, ${formatLength(command.reach, units)} either way.`;
    case 'notch-seam':
      return `Mark notch ${command.id} on both edges of the ${nameOf(command.line)} seam, ${Math.abs(command.off) < 0.05 ? 'at the bust point' : `${formatLength(Math.abs(command.off), units)} from the bust point`}.`;
    case 'turn':
      return turned(command);
    case 'separate':
      return 'Cut the two pieces apart along the rest of the line.';
    case 'place':
      return `Move the ${pieceName(command.piece)} on the table.`;
    case 'overlay':
      return `Close the ${pieceName(command.piece)} on the screen and lay it on the block: every part fits.`;
    case 'copy':
      return `Copy the pieces, to treat them for a ${command.as === 'woven' ? 'stable woven' : 'knit'}.`;
    case 'bridge':
      return `Bridge the opening in the ${pieceName(command.piece)} and blend the line.`;
    case 'ease':
      return `Mark the stretch of the ${pieceName(command.piece)} that is eased, between ${command.from} and ${command.to}.`;
    case 'take-out':
      return `Take the excess of the ${pieceName(command.piece)} out at the ${command.end === 'start' ? 'shoulder' : 'side'} end and redraw that edge.`;
    case 'true':
      return `True the back to the front: ${nameOf(command.edge)}.`;
    case 'renotch':
      return `Mark notch ${command.notch} again; the old one stays as a ghost.`;
    case 'allow':
      return `Allowance at ${nameOf(command.group)}: ${formatLength(command.width, units)}.`;
    case 'corner':
      return `Shape the corner between ${nameOf(command.before)} and ${nameOf(command.after)}, so that it lies flush when pressed.`;
    case 'carry-notches':
      return `Carry the notches of the ${pieceName(command.piece)} out to the cut line.`;
    case 'label':
      return `Label: ${command.name}, cut ${command.cut}${command.rightSideUp ? ', right side up' : ''}.`;
    case 'grain':
      return `Draw the grainline of the ${pieceName(command.piece)}.`;
    case 'walk':
      return `Walk the ${nameOf(command.seam)} along the ${command.along} line.`;
  }
}

function turned({ dart, into, by }: Turn): string {
  const opens = into === undefined ? '' : ` As much opens at ${theDart(into)}.`;
  if ('angle' in by) return `Turn the part by ${degrees(by.angle).toFixed(1)}°.${opens}`;
  if ('share' in by)
    return `Turn the part until ${(by.share * 100).toFixed(0)} % of ${theDart(dart)} is closed.${opens}`;
  return into === undefined
    ? `Turn the part about the ${dart} bust point until the legs meet, and tape them.`
    : `Turn the part until the legs of ${theDart(dart)} meet, and tape them.${opens}`;
}

function swung(by: TurnBy): string {
  if ('angle' in by) return `by ${degrees(by.angle).toFixed(1)}°`;
  return 'share' in by ? `by ${(by.share * 100).toFixed(0)} % of the dart` : 'until the dart is closed';
}

function filled({ dart, as, before, after, tucks }: AddFullness, units: Units): string {
  const what = as === 'tucks' ? `${tucks ?? 0} ${tucks === 1 ? 'tuck' : 'tucks'}` : as;
  const reach = `${formatLength(before, units)} before to ${formatLength(after, units)} after the opening`;
  return `Leave the ${nameOf(dart)} dart as ${what}: draw the edge smoothly from ${reach}.`;
}
