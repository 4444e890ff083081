import type { Check } from '../types.ts';
import { allowances } from './allowances.ts';
import { angleKept } from './angle-kept.ts';
import { connectors } from './connectors.ts';
import { dartClosed } from './dart-closed.ts';
import { dartFinished } from './dart-finished.ts';
import { dartMoved } from './dart-moved.ts';
import { dartsExtended } from './darts-extended.ts';
import { fullness } from './fullness.ts';
import { grain } from './grain.ts';
import { labels } from './labels.ts';
import { landmarksFound } from './landmarks-found.ts';
import { leftover } from './leftover.ts';
import { lineEnds } from './line-ends.ts';
import { linePasses } from './line-passes.ts';
import { lineShape } from './line-shape.ts';
import { notchesPlaced } from './notches-placed.ts';
import { openedOut } from './opened-out.ts';
import { overlaid } from './overlaid.ts';
import { princess } from './princess.ts';
import { readings } from './readings.ts';
import { seamNotches } from './seam-notches.ts';
import { separated } from './separated.ts';
import { sliver } from './sliver.ts';
import { slashDrawn } from './slash-drawn.ts';
import { slashesLaid } from './slashes-laid.ts';
import { walked } from './walked.ts';

/** All checks by the name that lessons call them by. To add one: its file, its test, one line here. */
export const CHECKS: ReadonlyMap<string, Check> = new Map([
  ['landmarks-found', landmarksFound],
  ['readings', readings],
  ['opened-out', openedOut],
  ['line-ends', lineEnds],
  ['line-shape', lineShape],
  ['line-passes', linePasses],
  ['notches-placed', notchesPlaced],
  ['darts-extended', dartsExtended],
  ['connectors', connectors],
  ['dart-closed', dartClosed],
  ['separated', separated],
  ['overlaid', overlaid],
  ['leftover', leftover],
  ['sliver', sliver],
  ['allowances', allowances],
  ['labels', labels],
  ['grain', grain],
  ['walked', walked],
  ['slash-drawn', slashDrawn],
  ['dart-moved', dartMoved],
  ['angle-kept', angleKept],
  ['dart-finished', dartFinished],
  ['slashes-laid', slashesLaid],
  ['fullness', fullness],
  ['princess', princess],
  ['seam-notches', seamNotches],
]);
