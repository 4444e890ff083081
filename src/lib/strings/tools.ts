import type { CommandName } from '../recipe/types.ts';

const NAMES: Readonly<Record<CommandName, string>> = {
  identify: 'Point out',
  read: 'Read off',
  'open-out': 'Mirror',
  'draw-line': 'Style line',
  notch: 'Notch',
  'remove-notch': 'Take a notch away',
  'extend-dart': 'Dart legs',
  connect: 'Connector',
  slash: 'Scissors',
  'draw-slash': 'Slash line',
  'cut-slash': 'Scissors to the bust point',
  pivot: 'Pin and swing',
  turn: 'Turn',
  separate: 'Cut apart',
  place: 'Move a piece',
  overlay: 'Close and overlay',
  copy: 'Copy for the other cloth',
  bridge: 'Bridge and blend',
  ease: 'Ease in',
  'take-out': 'Take out',
  true: 'True the back',
  renotch: 'Mark a notch again',
  allow: 'Width',
  corner: 'Corner',
  'carry-notches': 'Carry notches out',
  label: 'Label',
  grain: 'Grainline',
  walk: 'Walk a seam',
};

/** What the tool for a command is called. */
export const toolName = (command: CommandName): string => NAMES[command];
