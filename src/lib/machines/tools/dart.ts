import '../../recipe/commands/dart.ts';
import type { ToolSpec } from '../tool.ts';
import { backOff, cap, trueLegs } from './finish-dart.ts';
import { register } from './known.ts';

/** Written in the forms; nothing to take hold of. */
const drawSlash: ToolSpec = { id: 'draw-slash', targets: () => [], propose: () => undefined };
const cutSlash: ToolSpec = { id: 'cut-slash', targets: () => [], propose: () => undefined };

const pivot: ToolSpec = { id: 'pivot', targets: () => [], propose: () => undefined };

/** The tools for moving a dart and finishing it. */
export const DART = register({
  'draw-slash': drawSlash,
  'cut-slash': cutSlash,
  pivot,
  'back-off': backOff,
  'true-legs': trueLegs,
  cap,
});
