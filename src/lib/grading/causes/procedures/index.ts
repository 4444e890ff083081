import { otherBust, otherEdge, otherEnd, otherMirror, scaleOfPlace, toSewnPoint } from './drawing.ts';
import { cutLinesWalked, notBackedOff, otherFold } from './finishing.ts';
import { scaleOfLength } from './lengths.ts';
import { cutThrough, otherDart, sharesExchanged, slipped, wrongAngle, wrongWay } from './turns.ts';
import type { Procedure } from './types.ts';

/** The wrong procedures that are tried, common ones first. To add one: its function, one line here, its sentence in `strings/causes`. */
export const PROCEDURES: readonly Procedure[] = [
  wrongWay,
  slipped,
  wrongAngle,
  toSewnPoint,
  scaleOfPlace,
  scaleOfLength,
  otherEnd,
  otherEdge,
  otherBust,
  otherMirror,
  otherDart,
  sharesExchanged,
  cutThrough,
  notBackedOff,
  otherFold,
  cutLinesWalked,
];
